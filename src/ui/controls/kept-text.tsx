import { useId, useRef, useState } from 'react';

/** Text to look at and to copy. Where the browser has no clipboard for pages, the text is marked for copying by hand. */
export const KeptText = ({ label, text }: { readonly label: string; readonly text: string }) => {
  const id = useId();
  const box = useRef<HTMLTextAreaElement>(null);
  const [done, setDone] = useState('');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setDone('Copied.');
    } catch {
      box.current?.select();
      setDone('The text is marked: copy it with your browser’s own command.');
    }
  };
  return (
    <div className="kept-text">
      <label htmlFor={id}>{label}</label>
      <textarea id={id} ref={box} className="text-box" value={text} readOnly rows={6} />
      <button type="button" className="tool" onClick={() => void copy()}>
        Copy the text
      </button>
      <span role="status">{done}</span>
    </div>
  );
};
