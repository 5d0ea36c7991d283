/** The way back for what was deleted last, where there is something. */
export const DeletedLine = ({
  name,
  onBack,
}: {
  readonly name: string | null;
  readonly onBack: () => void;
}) => (
  <p className="deleted-line" role="status">
    {name !== null && (
      <>
        “{name}” is deleted.{' '}
        <button type="button" className="tool" onClick={onBack}>
          Bring it back
        </button>
      </>
    )}
  </p>
);
