/** The way back for what was taken out last, where there is something. */
export const TakenOut = ({ name, onBack }: { readonly name: string | null; readonly onBack: () => void }) => (
  <p className="taken-out" role="status">
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
