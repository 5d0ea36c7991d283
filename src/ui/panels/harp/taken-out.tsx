/** The way back for what was taken out last, as long as the panel is open. */
export const TakenOut = ({ name, onBack }: { readonly name: string | null; readonly onBack: () => void }) => (
  <p className="hint" role="status">
    {name !== null && (
      <>
        “{name}” is taken out.{' '}
        <button type="button" className="tool" onClick={onBack}>
          Bring it back
        </button>
      </>
    )}
  </p>
);
