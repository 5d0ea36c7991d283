import { STRETCH } from '../../../core/harp/harp-case';
import { INTONATION_IDS, INTONATIONS, type IntonationId } from '../../../core/harp/intonation';
import { coverSentence, findTuning } from '../../../core/harp/tunings';
import { type Kept, keeping, keptOf } from '../../../core/song/key-coupling';
import { REFERENCE_PITCHES } from '../../../core/theory/temperament';
import { asHz } from '../../../core/theory/units';
import { Choice } from '../../controls/choice';
import { Slider } from '../../controls/slider';
import { Switch } from '../../controls/switch';
import { useSession } from '../../state/session-context';
import { useChosen } from '../../state/use-chosen';
import { useNames } from '../../state/use-names';

const RANGES = [
  { value: 1, text: 'High (an octave up)' },
  { value: 0, text: 'Standard' },
  { value: -1, text: 'Low (an octave down)' },
  { value: -2, text: 'Double low' },
];

const KEPT: readonly { readonly value: Kept; readonly text: string }[] = [
  { value: 'position', text: 'The position' },
  { value: 'harp', text: 'The harp in hand' },
  { value: 'song', text: 'The song’s key' },
];

const KEPT_HINTS: Readonly<Record<Kept, string>> = {
  position: 'Another song key needs another harp; another harp moves the song.',
  harp: 'Another song key is played in another position on the same harp.',
  song: 'Another position needs another harp; another harp is played in another position.',
};

const OWN_CENTS = 'own';
const BEATING = 'Notes beat when together they swell and fade, because they are a little off each other.';

/** Range, pitch and temper of the harp in hand. */
export const HarpInHand = () => {
  const { commands } = useSession();
  const names = useNames();
  const settings = useChosen((settings) => settings);
  const { intonation } = settings;
  const ownCents = typeof intonation !== 'string';
  const options: readonly { readonly value: IntonationId | typeof OWN_CENTS; readonly text: string }[] = [
    ...INTONATION_IDS.map((id) => ({ value: id, text: INTONATIONS[id].name })),
    ...(ownCents ? [{ value: OWN_CENTS, text: 'My own cents' } as const] : []),
  ];
  const table = findTuning(settings.tuning.id);
  const cover = table === null ? null : coverSentence(table, settings.harpKey);
  return (
    <>
      {table?.labelNote !== undefined && (
        <p className="hint">
          {table.name}: {cover !== null && `${names.text(cover)} `}
          {table.labelNote}
        </p>
      )}
      <Choice
        label="Range"
        value={settings.harpOctave}
        options={RANGES}
        onChoose={(harpOctave) => commands.choose({ harpOctave })}
      />
      <Slider
        label={`${names.pitch('A4')} is`}
        valueText={`${settings.reference} Hz`}
        value={settings.reference}
        low={REFERENCE_PITCHES.low}
        high={REFERENCE_PITCHES.high}
        step={1}
        onChange={(hz) => commands.choose({ reference: asHz(hz) })}
      />
      <p className="hint">
        Harps are often tuned a little sharp (442 to 446 Hz). The band takes the pitch you set here.
      </p>
      <Choice
        label="Intonation"
        value={ownCents ? OWN_CENTS : intonation}
        options={options}
        hint={ownCents ? 'Cents as set reed by reed.' : `${INTONATIONS[intonation].description} ${BEATING}`}
        onChoose={(id) => {
          if (id !== OWN_CENTS) commands.choose({ intonation: id });
        }}
      />
      <Slider
        label="Octave stretch"
        valueText={`${settings.stretch} cents an octave`}
        value={settings.stretch}
        low={STRETCH.least}
        high={STRETCH.most}
        step={1}
        onChange={(stretch) => commands.choose({ stretch })}
      />
      <Switch
        label="Show expected cents on the map"
        on={settings.showCents}
        hint="What a tuner set to 440 Hz should show for each natural note."
        onChange={(showCents) => commands.choose({ showCents })}
      />
      <Switch
        label="Tune the band’s chords to this harp"
        on={settings.bandFollowsHarp}
        hint="Held chords of harp and band then agree; with equal intonation it changes nothing."
        onChange={(bandFollowsHarp) => commands.choose({ bandFollowsHarp })}
      />
      <Choice
        label="When another key is chosen, keep"
        value={keptOf(settings)}
        options={KEPT}
        hint={KEPT_HINTS[keptOf(settings)]}
        onChoose={(kept) => commands.choose(keeping(kept))}
      />
    </>
  );
};
