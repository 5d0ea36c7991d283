import { useRef } from 'react';

interface Props {
  /** What the button says. */
  readonly text: string;
  /** What the field behind it is called. */
  readonly label: string;
  /** Kinds of files, as the browser's picker takes them. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

/** Opens the browser's file picker. The same file can be chosen again, say after a copy gone wrong. */
export const FileButton = ({ text, label, accept, onFile }: Props) => {
  const picker = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className="tool" onClick={() => picker.current?.click()}>
        {text}
      </button>
      <input
        ref={picker}
        type="file"
        accept={accept}
        aria-label={label}
        hidden
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file) onFile(file);
          target.value = '';
        }}
      />
    </>
  );
};
