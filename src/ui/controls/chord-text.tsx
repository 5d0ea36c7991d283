import type { CSSProperties } from 'react';
import type { ChordSpan } from '../../core/chart/chart';
import { chordLines, chordsEms } from '../../core/song/chord-ems';
import type { Chord, NoteName } from '../../core/theory/chord';
import type { NoteNames } from '../../core/theory/note-names';
import { useNames } from '../state/use-names';

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

interface Props {
  readonly chord: Chord;
  /** What numbers count from, where that is not the key being heard. */
  readonly tonic?: NoteName | undefined;
}

/**
 * A chord symbol as it is set in print: root large, accidental and quality raised. Where there is little width the style
 * sheet sets a long one in lines, the root above what kind of chord it is.
 */
export const ChordText = ({ chord, tonic }: Props) => {
  const { root, accidental, quality, bass } = useNames(tonic).symbol(chord);
  return (
    <span className="chord">
      {root}
      {accidental !== '' && <span className="accidental">{accidental}</span>}
      <span className="kind">
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
    </span>
  );
};

/** What stands in a chart for a stretch of it: its chord, struck once where a dot is under it, or that the band rests. */
export const SpanText = ({ span, tonic }: { readonly span: ChordSpan; readonly tonic?: NoteName }) => {
  if (span.band === 'rest') return <span className="chord no-chord">N.C.</span>;
  if (span.band !== 'stop') return <ChordText chord={span.chord} tonic={tonic} />;
  return (
    <span className="struck">
      <ChordText chord={span.chord} tonic={tonic} />
    </span>
  );
};

/** Beyond this, in ems, a symbol in one line is too long for the quarter of a chart beside the cards, as `E♭m7♭5` is. */
const WIDE = 2.1;

/** What a style sheet needs to know of chords to set them as large as they fit: their widths, and whether one is long. */
export const namesStyle = (chords: readonly { readonly chord: Chord }[], names: NoteNames) => {
  const lines = chordLines(chords, names);
  return {
    'data-long': lines !== null,
    'data-wide': lines !== null && lines.one > WIDE,
    style: {
      '--ems': chordsEms(chords, names),
      '--one': lines?.one,
      '--two': lines?.two,
      '--three': lines?.three,
    } as CSSProperties,
  };
};
