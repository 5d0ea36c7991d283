import type { Chord } from '../core/theory/chord';
import { prettySymbol } from '../core/theory/chord-text';

/** A chord symbol as it is set in print: root large, accidental and quality raised. */
export const ChordText = ({ chord }: { readonly chord: Chord }) => {
  const { root, accidental, quality, bass } = prettySymbol(chord);
  return (
    <span className="chord">
      {root}
      {accidental !== '' && <span className="accidental">{accidental}</span>}
      {quality !== '' && <span className="quality">{quality}</span>}
      {bass !== null && (
        <span className="bass">
          /{bass.letter}
          {bass.accidental}
        </span>
      )}
    </span>
  );
};
