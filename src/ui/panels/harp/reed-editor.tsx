import { useId, useRef, useState } from 'react';
import { HOLES, keyPitch } from '../../../core/harp/build-harp';
import { markTuning, REED_RANGE, withHoles, withReed } from '../../../core/harp/custom-tuning';
import { BREATHS, type Breath, type Tuning } from '../../../core/harp/harp';
import { intonate } from '../../../core/harp/intonation';
import { withReeds } from '../../../core/song/key-coupling';
import { pitchName } from '../../../core/theory/pitch';
import { asMidi } from '../../../core/theory/units';
import { CentsField } from '../../controls/cents-field';
import { Choice } from '../../controls/choice';
import { DeletedLine } from '../../controls/deleted-line';
import { useSelected, useSession } from '../../state/session-context';
import { useChosen } from '../../state/use-chosen';
import { useNames } from '../../state/use-names';

const useReedCents = (): { readonly blow: readonly number[]; readonly draw: readonly number[] } => {
  const { tuning, intonation } = useChosen((settings) => settings);
  return typeof intonation === 'string' ? intonate(tuning, intonation).cents : intonation.cents;
};

const Reed = ({ breath, hole }: { readonly breath: Breath; readonly hole: number }) => {
  const { commands } = useSession();
  const settings = useChosen((settings) => settings);
  const { tuning, harpKey, harpOctave } = settings;
  const cents = useReedCents();
  const semitones = tuning[breath][hole - 1] ?? 0;
  const name = useNames().pitch(pitchName(asMidi(keyPitch(harpKey, harpOctave) + semitones)));
  const move = (by: number): void =>
    commands.choose(
      withReeds(settings, {
        ...withReed(tuning, breath, hole, semitones + by),
        id: 'own',
        name: 'My reeds',
      }),
    );
  const retune = (value: number): void =>
    commands.choose({ intonation: { cents: { ...cents, [breath]: cents[breath].with(hole - 1, value) } } });
  return (
    <td>
      <span className="reed">
        <button
          type="button"
          className="tool"
          aria-label={`${breath} ${hole} a semitone lower`}
          disabled={semitones <= REED_RANGE.low}
          onClick={() => move(-1)}
        >
          −
        </button>
        <output aria-label={`${breath} ${hole}`}>{name}</output>
        <button
          type="button"
          className="tool"
          aria-label={`${breath} ${hole} a semitone higher`}
          disabled={semitones >= REED_RANGE.high}
          onClick={() => move(1)}
        >
          +
        </button>
        <CentsField
          label={`Cents of ${breath} ${hole}`}
          cents={cents[breath][hole - 1] ?? 0}
          onChange={retune}
        />
      </span>
    </td>
  );
};

const Valves = ({ tuning }: { readonly tuning: Tuning }) => {
  const { commands } = useSession();
  const valved = useSelected((state) => state.settings.valved);
  const flip = (hole: number): void =>
    commands.choose({
      valved: valved.includes(hole)
        ? valved.filter((each) => each !== hole)
        : [...valved, hole].sort((a, b) => a - b),
    });
  return (
    <fieldset className="stack">
      <legend className="label">
        Half-valved holes (common practice: the lower reed then bends by itself)
      </legend>
      <div className="sound-switches">
        {tuning.blow.map((_, i) => (
          <button
            // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
            key={i}
            type="button"
            className="tool"
            aria-label={`Valve on hole ${i + 1}`}
            aria-pressed={valved.includes(i + 1)}
            onClick={() => flip(i + 1)}
          >
            {i + 1}
          </button>
        ))}
      </div>
    </fieldset>
  );
};

const SaveTuning = ({ tuning }: { readonly tuning: Tuning }) => {
  const { commands } = useSession();
  const own = useSelected((state) => state.ownTunings);
  const [name, setName] = useState('');
  const field = useRef<HTMLInputElement>(null);
  const hint = useId();
  const save = (): void => {
    const text = name.trim();
    field.current?.focus();
    if (text === '') return;
    const kept = { ...tuning, id: own.find((each) => each.name === text)?.id ?? `own-${text}`, name: text };
    commands.keepTuning(kept);
    commands.chooseTuning(kept);
    setName('');
  };
  return (
    <>
      <div className="save-row">
        <label className="field">
          <span className="label">Name of this tuning</span>
          <input
            ref={field}
            className="text-box"
            value={name}
            maxLength={80}
            aria-describedby={hint}
            onChange={(event) => setName(event.target.value)}
            onKeyDown={(event) => {
              if (event.key === 'Enter') save();
            }}
          />
        </label>
        <button type="button" className="tool" aria-disabled={name.trim() === ''} onClick={save}>
          Save tuning
        </button>
      </div>
      <p className="hint" id={hint}>
        A tuning is saved as its notes. To keep cents and valves with them, put the harp into your case.
      </p>
    </>
  );
};

/** The tunings the player has kept. */
const OwnTunings = () => {
  const { commands } = useSession();
  const own = useSelected((state) => state.ownTunings);
  const [deleted, setDeleted] = useState<Tuning | null>(null);
  const drop = (tuning: Tuning): void => {
    setDeleted(tuning);
    commands.dropTuning(tuning.id);
  };
  const bringBack = (): void => {
    if (deleted !== null) commands.keepTuning(deleted);
    setDeleted(null);
  };
  return (
    <>
      {own.map((each) => (
        <div key={each.id} className="row">
          <span>{each.name}</span>
          <button type="button" className="tool" onClick={() => commands.chooseTuning(each)}>
            Use
          </button>
          <button
            type="button"
            className="tool"
            aria-label={`Delete ${each.name}`}
            onClick={() => drop(each)}
          >
            Delete
          </button>
        </div>
      ))}
      <DeletedLine name={deleted?.name ?? null} onBack={bringBack} />
    </>
  );
};

/** Every reed of the harp in hand: its note and its cents. Bends and overbends on the map follow at once. */
export const ReedEditor = () => {
  const { commands } = useSession();
  const settings = useChosen((settings) => settings);
  const { tuning } = settings;
  const marks = markTuning(tuning);
  const counts = Array.from({ length: HOLES.most - HOLES.fewest + 1 }, (_, i) => {
    const holes = HOLES.fewest + i;
    return { value: holes, text: `${holes} holes` };
  });
  return (
    <>
      <Choice
        label="Size"
        value={tuning.blow.length}
        options={counts}
        onChoose={(holes) => commands.choose(withReeds(settings, { ...withHoles(tuning, holes), id: 'own' }))}
      />
      <table className="reeds">
        <thead>
          <tr>
            <th scope="col">Hole</th>
            <th scope="col">Blow, cents</th>
            <th scope="col">Draw, cents</th>
          </tr>
        </thead>
        <tbody>
          {tuning.blow.map((_, i) => (
            <tr
              // biome-ignore lint/suspicious/noArrayIndexKey: holes are known by their number
              key={i}
            >
              <th scope="row">{i + 1}</th>
              {BREATHS.map((breath) => (
                <Reed key={breath} breath={breath} hole={i + 1} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {marks.length > 0 && (
        <ul className="marks">
          {marks.map(({ hole, kind, sentence }) => (
            <li key={`${hole}${kind}${sentence}`}>{sentence}</li>
          ))}
        </ul>
      )}
      <Valves tuning={tuning} />
      <SaveTuning tuning={tuning} />
      <OwnTunings />
    </>
  );
};
