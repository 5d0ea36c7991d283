import { Fold } from '../../controls/fold';

const LINES: readonly (readonly [string, string])[] = [
  ['C7 | F7 | C7', 'A line between bars. The end of a line ends a bar, too.'],
  ['Dm7 G7', 'Two chords share the bar.'],
  ['C7 / / F7', 'A slash or a dot holds the chord for one more beat.'],
  ['%', 'The bar before, once more.'],
  ['|: C7 | F7 :| x3', 'What stands between is played twice, or as often as you say.'],
  ['|: C7 | [1 F7 :| [2 G7', 'First and second ending.'],
  ['[A]  or  Verse:', 'A section begins; bars are counted in it.'],
  ['Order: A A B A', 'When each section is played: also “A three times, then B”.'],
  ['Order: Intro A A', 'A section called Intro at the beginning is played in the first chorus alone.'],
  ['D.C. al Fine, D.S. al Coda', 'As on paper, with Fine, Segno, To Coda and Coda.'],
  ['N.C.', 'The band rests.'],
  ['C7!', 'The band strikes once and rests.'],
  ['Pick-up: D7 /', 'Beats before the first bar: a chord or / for each. The count-in leads into them.'],
  ['Key: G', 'Also Title:, Meter:, Feel: and Tempo:. In a section, Key: is its own.'],
  [
    'Bb7 F#m7b5 C7/E',
    'Chords as you know them, flats as b, sharps as #, always by English letters: B is the note below C. ♭ ♯ ø ° △ work as well.',
  ],
  ['I7 | iv7 | V7/ii', 'Or Roman numerals in the key: small ones are minor.'],
  ['1 | 4 | 6m | b7', 'Or numbers, which read as numerals do: 1 is I.'],
];

/** How chords are written. */
export const ChartHelp = () => (
  <Fold title="How to write a chart">
    <dl className="chart-help">
      {LINES.map(([written, meaning]) => (
        <div key={written}>
          <dt>
            <code>{written}</code>
          </dt>
          <dd>{meaning}</dd>
        </div>
      ))}
    </dl>
    <p className="hint">
      Up to 256 bars, repeats counted. What cannot be read stays in the text and sounds as the chord before
      it. A chart in 4/4 goes along with the feel, a slow 12/8 too; other meters stay as they are.
    </p>
  </Fold>
);
