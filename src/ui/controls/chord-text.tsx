import type { Chord } from '../../core/theory/chord';
import { prettySymbol } from '../../core/theory/chord-text';

const SIGN = /([♭♯𝄪𝄫])/u;

/** Text whose accidentals can be set apart: their face knows one weight only. */
const Signed = ({ text }: { readonly text: string }) =>
  text.split(SIGN).map((part, i) =>
    SIGN.test(part) ? (
      // biome-ignore lint/suspicious/noArrayIndexKey: the parts of a text are known by their place
      <span key={i} className="sign">
        {part}
      </span>
    ) : (
      part
    ),
  );

/** A chord symbol as it is set in print: root large, accidental and quality raised. */
export const ChordText = ({ chord }: { readonly chord: Chord }) => {
  const { root, accidental, quality, bass } = prettySymbol(chord);
  return (
    <span className="chord">
      {root}
      {accidental !== '' && <span className="accidental">{accidental}</span>}
      {quality !== '' && (
        <span className="quality">
          <Signed text={quality} />
        </span>
      )}
      {bass !== null && (
        <span className="bass">
          <Signed text={`/${bass.letter}${bass.accidental}`} />
        </span>
      )}
    </span>
  );
};
