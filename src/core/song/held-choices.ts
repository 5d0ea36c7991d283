/** Choices that wait for the next chorus: key, tempo, feel and form. All others are carried out at once. */
import type { Playhead } from '../arranger/playhead';
import { feelOf } from '../feels/feels';
import type { Settings } from '../settings/settings';
import type { NoteNames } from '../theory/note-names';
import { keyName } from '../theory/pitch';
import type { Tune } from './tune';

/** The choices that wait, as they will be. */
export type HeldChoices = Partial<Settings>;

/** What of a harp in hand goes with its key: another harp is taken whole. */
const REEDS = ['harpOctave', 'tuning', 'intonation', 'stretch', 'valved', 'reference'] as const;

const heldFields = (now: Settings, asked: Settings): readonly (keyof Settings)[] => {
  const keyMoves = now.harpKey !== asked.harpKey || now.position !== asked.position;
  return [
    ...(keyMoves ? (['harpKey', 'position', ...REEDS] as const) : []),
    ...(now.formId === asked.formId ? [] : (['formId'] as const)),
    ...(now.tempo === asked.tempo ? [] : (['tempo'] as const)),
    ...(now.style.feel === asked.style.feel ? [] : (['style'] as const)),
  ];
};

const pick = (settings: Settings, fields: readonly (keyof Settings)[]): HeldChoices =>
  Object.fromEntries(fields.map((field) => [field, settings[field]]));

/**
 * Parts what is asked for into what is carried out now and what waits; nothing waits where neither key, tempo, feel nor
 * form is another. A form that waits leaves the repeated bars of the one that is played.
 */
export const holdChoices = (
  now: Settings,
  asked: Settings,
): { readonly now: Settings; readonly held: HeldChoices | null } => {
  const fields = heldFields(now, asked);
  const repeat = asked.formId === now.formId ? asked.plan.repeat : (asked.plan.repeat ?? now.plan.repeat);
  return {
    now: { ...asked, ...pick(now, fields), plan: { ...asked.plan, repeat } },
    held: fields.length === 0 ? null : pick(asked, fields),
  };
};

/** Settings with what waits carried out. */
export const withHeld = (settings: Settings, held: HeldChoices): Settings => ({
  ...settings,
  ...held,
  ...(held.formId === undefined ? {} : { plan: { ...settings.plan, repeat: null } }),
});

/** The chorus from which a choice made at a place holds, from 0; null where no chorus follows. */
export const chorusAfter = ({ section }: Playhead): number | null => {
  if (section.last || section.kind === 'ending') return null;
  return section.kind === 'chorus' ? section.chorus + 1 : section.chorus;
};

/**
 * What waits, in a few words, as in “A on a D harp, tempo 120”.
 * @param tune the song as it will be.
 */
export const heldWords = (
  held: HeldChoices,
  { chart, harp }: Pick<Tune, 'chart' | 'harp'>,
  names: NoteNames,
): string =>
  [
    ...(held.formId === undefined ? [] : [chart.title]),
    ...(held.harpKey === undefined
      ? []
      : [
          names.key(
            `${chart.tonic}${chart.mode === 'minor' ? ' minor' : ''} on a ${keyName(harp.key, 'major')} harp`,
          ),
        ]),
    ...(held.style === undefined ? [] : [feelOf(held.style.feel).name]),
    ...(held.tempo === undefined ? [] : [`tempo ${Math.round(held.tempo * 10) / 10}`]),
  ].join(', ');
