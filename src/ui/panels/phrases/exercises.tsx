import { memo, useState } from 'react';
import { SONG_LIMITS } from '../../../core/book/book-song';
import type { KeptExercise } from '../../../core/book/kept-exercise';
import { songFacts } from '../../../core/book/song-facts';
import { findKept } from '../../../core/phrasebook/kept-phrase';
import { STARTER_EXERCISES, type StarterExercise } from '../../../core/phrasebook/starter-set';
import { tagsOf } from '../../../core/theory/kept-tags';
import { LONGEST_NAME } from '../../../core/theory/kept-text';
import { DeletedLine } from '../../controls/deleted-line';
import { TextField } from '../../controls/text-field';
import { useSelected, useSession } from '../../state/session-context';
import { LibraryFile } from './library-file';

interface Facts {
  readonly name: string;
  /** With commas between them. */
  readonly tags: string;
  readonly words: string;
}

const FIELDS = [
  ['name', 'Name of the exercise', LONGEST_NAME],
  ['tags', 'Its tags, with commas between them', 200],
  ['words', 'To remember with it', SONG_LIMITS.words],
] as const;

const FactFields = ({
  facts,
  onChange,
}: {
  readonly facts: Facts;
  readonly onChange: (facts: Facts) => void;
}) => (
  <>
    {FIELDS.map(([name, label, longest]) => (
      <TextField
        key={name}
        label={label}
        longest={longest}
        value={facts[name]}
        onChange={(text) => onChange({ ...facts, [name]: text })}
      />
    ))}
  </>
);

const kept = ({ name, tags, words }: Facts) => ({ name, tags: tagsOf(tags), words });

const EMPTY: Facts = { name: '', tags: '', words: '' };

/** What is on the stand, kept as an exercise. */
const KeepOne = () => {
  const { commands } = useSession();
  const [facts, setFacts] = useState(EMPTY);
  return (
    <details>
      <summary>Keep what is on the stand as an exercise</summary>
      <div className="group">
        <FactFields facts={facts} onChange={setFacts} />
        <div className="own-buttons">
          <button
            type="button"
            className="tool"
            onClick={() => {
              commands.keepExercise(kept(facts));
              setFacts(EMPTY);
            }}
          >
            Keep the exercise
          </button>
        </div>
      </div>
    </details>
  );
};

/** Name, tags and words changed, and the exercise as it was before. */
const Changing = ({ exercise, onDone }: { readonly exercise: KeptExercise; readonly onDone: () => void }) => {
  const { commands } = useSession();
  const { id, name, tags, words, earlier } = exercise;
  const [facts, setFacts] = useState<Facts>({ name, words, tags: tags.join(', ') });
  return (
    <div className="group">
      <FactFields facts={facts} onChange={setFacts} />
      <div className="own-buttons">
        <button
          type="button"
          className="tool"
          onClick={() => {
            commands.changeExercise(id, kept(facts));
            onDone();
          }}
        >
          Keep the change
        </button>
        <button type="button" className="tool" onClick={() => commands.keepExerciseAgain(id)}>
          Take over what is on the stand
        </button>
        {earlier.map((text, i) => (
          <button
            key={text}
            type="button"
            className="tool"
            onClick={() => commands.openEarlierExercise(id, i)}
          >
            Earlier version {i + 1} on the stand
          </button>
        ))}
      </div>
    </div>
  );
};

/** One exercise of one's own. */
const OwnExercise = memo(({ exercise }: { readonly exercise: KeptExercise }) => {
  const { commands } = useSession();
  const ownCharts = useSelected((state) => state.ownCharts);
  const [changing, setChanging] = useState(false);
  const { id, name, tags, words } = exercise;
  const { form, feel, tempo, key } = songFacts(exercise, ownCharts);
  return (
    <li className="group">
      <h4>{name}</h4>
      <p className="hint">
        {[form, feel, `${tempo} a minute`, `in ${key}`, ...tags].join(', ')}
        {words !== '' && `. ${words}`}
      </p>
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => commands.openKeptExercise(id)}>
          Put <span className="unseen">“{name}” </span>on the stand
        </button>
        <button
          type="button"
          className="tool"
          aria-expanded={changing}
          onClick={() => setChanging(!changing)}
        >
          Change <span className="unseen">{name}</span>
        </button>
        <button type="button" className="tool" onClick={() => commands.duplicateExercise(id)}>
          Duplicate <span className="unseen">{name}</span>
        </button>
        <button type="button" className="tool" onClick={() => commands.dropExercise(id)}>
          Delete <span className="unseen">{name}</span>
        </button>
      </div>
      {changing && <Changing exercise={exercise} onDone={() => setChanging(false)} />}
    </li>
  );
});
OwnExercise.displayName = 'OwnExercise';

const Starter = ({ exercise }: { readonly exercise: StarterExercise }) => {
  const { commands } = useSession();
  const { id, name, about } = exercise;
  return (
    <li className="group">
      <h4>{name}</h4>
      <p>{about}</p>
      <div className="own-buttons">
        <button type="button" className="tool" onClick={() => commands.openExercise(exercise)}>
          Put <span className="unseen">“{name}” </span>on the stand
        </button>
        <button type="button" className="tool" onClick={() => commands.duplicateExercise(id)}>
          Duplicate <span className="unseen">{name}</span>
        </button>
      </div>
    </li>
  );
};

const STARTERS = STARTER_EXERCISES.map((exercise) => ({
  ...{ exercise, name: exercise.name, words: exercise.about },
  tags: ['village hall'],
}));

/** Exercises: kept from the stand and put on it again, one's own first. */
export const Exercises = () => {
  const { commands } = useSession();
  const { exercises: own, dropped } = useSelected((state) => state.phrasebook);
  const [typed, setTyped] = useState('');
  const found = findKept(own, typed);
  const starters = findKept(STARTERS, typed);
  return (
    <>
      <p className="hint">
        An exercise is its form, feel, tempo, harp, calls and partner. Put one on the stand, change what you
        like, and keep it under a name. For a class passes it on as a link or a file.
      </p>
      <KeepOne />
      <LibraryFile
        what="exercises"
        none={own.length === 0}
        onSave={commands.saveExercises}
        onOpen={commands.openExercises}
      />
      <DeletedLine
        name={dropped?.kind === 'exercise' ? dropped.item.name : null}
        onBack={commands.restoreExercise}
      />
      <TextField
        label="Find an exercise by name, tag or written words"
        search
        value={typed}
        onChange={setTyped}
      />
      {found.length + starters.length === 0 && <p role="status">No exercise has all of these words.</p>}
      <ul className="rows">
        {found.map((exercise) => (
          <OwnExercise key={exercise.id} exercise={exercise} />
        ))}
        {starters.map(({ exercise }) => (
          <Starter key={exercise.id} exercise={exercise} />
        ))}
      </ul>
    </>
  );
};
