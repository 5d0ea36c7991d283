import type { Drawing } from '../../core/settings/page-settings';
import { SCALE_IDS, scaleName } from '../../core/theory/scales';
import { capital } from '../../core/theory/wording';
import { Choice } from '../controls/choice';
import { useSelected, useSession } from '../state/session-context';

const DRAWINGS: readonly { readonly id: Drawing; readonly text: string }[] = [
  { id: 'comb', text: 'Comb' },
  { id: 'keys', text: 'Keys' },
  { id: 'both', text: 'Both' },
];

/** Scales are named in lower case inside sentences; the list begins them as every other list does. */

const LAYERS = [
  { value: 'none', text: 'Chord tones only' },
  { value: 'position', text: 'Mode of the position' },
  { value: 'chord', text: 'Scale of each chord' },
  ...SCALE_IDS.map((id) => ({ value: id as string, text: capital(scaleName(id)) })),
];

const TECHNIQUES = [
  { field: 'drawBends', text: 'Draw bends' },
  { field: 'blowBends', text: 'Blow bends' },
  { field: 'overbends', text: 'Overbends' },
] as const;

/** Which drawing, which scale lies under the chord tones, which techniques count. */
export const MapHead = () => {
  const { commands } = useSession();
  const { drawing, technique, layer } = useSelected((state) => state.settings);
  return (
    <header>
      <h2 className="unseen">Harp map</h2>
      <fieldset className="segments" aria-label="Drawing">
        {DRAWINGS.map(({ id, text }) => (
          <button
            key={id}
            type="button"
            aria-pressed={drawing === id}
            onClick={() => commands.choose({ drawing: id })}
          >
            {text}
          </button>
        ))}
      </fieldset>
      <Choice
        label="Scale"
        value={layer}
        options={LAYERS}
        onChoose={(value) => commands.choose({ layer: value })}
      />
      <fieldset className="ticks" aria-label="Techniques you use">
        {TECHNIQUES.map(({ field, text }) => (
          <button
            key={field}
            type="button"
            aria-pressed={technique[field]}
            onClick={() => commands.choose({ technique: { ...technique, [field]: !technique[field] } })}
          >
            {text}
          </button>
        ))}
      </fieldset>
    </header>
  );
};
