import type { OpenTake } from '../../../app/takes/takes-state';
import { spokenHole, type TabStyle, tab, tabGroup } from '../../../core/harp/tab';
import type { WrittenBar, WrittenNote, WrittenPass } from '../../../core/takes/take-bars';
import type { NoteNames } from '../../../core/theory/note-names';
import { pitchName } from '../../../core/theory/pitch';
import { ChordText } from '../../controls/chord-text';
import { BarHitSigns, hitsInWords } from '../../ear/bar-hits';
import { useSelected } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** A note or grip as tab; a note's name where the harp has nothing there, and a wave for what never settled. */
const signOf = (
  { sound, together, steady, pitch }: WrittenNote,
  style: TabStyle,
  names: NoteNames,
): string => {
  if (sound !== null) return together.length > 0 ? tabGroup([sound, ...together], style) : tab(sound, style);
  return steady ? names.note(pitchName(pitch).replace(/-?\d+$/, '')) : '~';
};

const spokenOf = (
  { sound, together, alternatives, steady, pitch }: WrittenNote,
  names: NoteNames,
): string => {
  if (sound === null) return steady ? `${names.pitch(pitchName(pitch))}, not on this harp` : 'unsteady';
  if (together.length > 0) return [sound, ...together].map(spokenHole).join(' with ');
  return [sound, ...alternatives].map(spokenHole).join(' or ');
};

const Notes = ({ notes, style }: { readonly notes: readonly WrittenNote[]; readonly style: TabStyle }) => {
  const names = useNames();
  return (
    <>
      <span className="played-notes" aria-hidden="true">
        {notes.map((note) => (
          <b
            key={note.from}
            data-open={note.alternatives.length > 0 ? true : undefined}
            title={spokenOf(note, names)}
          >
            {signOf(note, style, names)}
          </b>
        ))}
      </span>
      <span className="unseen">{notes.map((note) => spokenOf(note, names)).join(', ')}</span>
    </>
  );
};

interface BarProps {
  readonly bar: WrittenBar;
  readonly hits: Parameters<typeof BarHitSigns>[0]['hits'];
  readonly style: TabStyle;
}

const Bar = ({ bar, hits, style }: BarProps) => (
  <li className="played-bar">
    <span className="played-head">
      {bar.number !== null && <i aria-hidden="true">{bar.number}</i>}
      {bar.chords.map((chord, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: chords of a bar are known by their place
        <ChordText key={i} chord={chord} />
      ))}
    </span>
    <Notes notes={bar.notes} style={style} />
    <BarHitSigns hits={hits} />
    {hits !== undefined && <span className="unseen">{hitsInWords(hits)}</span>}
  </li>
);

const TITLES = { 'count-in': 'Count-in', intro: 'Opening', ending: 'Ending' } as const;

const Pass = ({ pass, style }: { readonly pass: WrittenPass; readonly style: TabStyle }) => {
  const names = useNames();
  if (pass.kind === 'free') {
    return (
      <ol className="played-phrases" aria-label="Without the band">
        {pass.phrases.map((phrase) => (
          <li key={phrase[0]?.from}>
            <Notes notes={phrase} style={style} />
          </li>
        ))}
      </ol>
    );
  }
  const { kind, chorus, bars, report } = pass;
  return (
    <section className="played-pass">
      <h4>{kind === 'chorus' ? `Chorus ${chorus + 1}` : TITLES[kind]}</h4>
      {report !== null && <p>{names.text(report.advice)}</p>}
      <ol className="played-bars">
        {bars.map((bar, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: bars are known by their place
          <Bar key={i} bar={bar} hits={report?.heard.bars[i]} style={style} />
        ))}
      </ol>
    </section>
  );
};

/** A take as tab, under the bars where it was played to the band. A dotted line: it may as well be another hole. */
export const WrittenTake = ({ take }: { readonly take: OpenTake }) => {
  const style = useSelected((state) => state.settings.tabStyle);
  if (take.notes === 0) return <p>No note of this harp was heard in it.</p>;
  return (
    <div className="played">
      {take.passes.map((pass, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: passes are known by their place
        <Pass key={i} pass={pass} style={style} />
      ))}
      {take.passes.some(hasOpen) && (
        <p className="hint">Dotted: the pitch alone does not tell which of two holes it was.</p>
      )}
    </div>
  );
};

const hasOpen = (pass: WrittenPass): boolean => {
  const notes = pass.kind === 'free' ? pass.phrases.flat() : pass.bars.flatMap((bar) => bar.notes);
  return notes.some(({ alternatives }) => alternatives.length > 0);
};
