import type { Plan } from '../arranger/program';
import type { Style } from '../players/style';
import { SETTINGS, type Settings } from './settings';

type Names<Fields> = Readonly<Record<keyof Fields, string>>;

const STYLE_NAMES: Names<Style> = {
  feel: 'feel',
  bass: 'bass',
  chords: 'chord instrument',
  second: 'second chord player',
  kit: 'drum kit',
  swing: 'swing',
  push: 'place on the beat',
  time: 'half or double time',
  stopTime: 'stop-time',
  leaveRoom: 'room for the harp',
  seed: 'take',
};

const PLAN_NAMES: Names<Plan> = {
  countInBars: 'count-in',
  intro: 'intro',
  choruses: 'length',
  arc: 'build of the choruses',
  ending: 'ending',
  ritard: 'slowing down',
  repeat: 'repeat',
  countBetween: 'count between',
  turnarounds: 'turnarounds',
  dynamics: 'loudness from bar to bar',
  keys: 'change of key',
  tempo: 'change of tempo',
  click: 'place of the click',
  dropOut: 'drop-out',
  sounding: 'choice of parts',
};

const isSame = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b);

const otherFields = <Fields extends object>(from: Fields, to: Fields, names: Names<Fields>): string[] =>
  (Object.keys(names) as (keyof Fields)[])
    .filter((field) => !isSame(from[field], to[field]))
    .map((field) => names[field]);

/** A feel brings its instruments: they are not named beside it. */
const styleNames = (from: Style, to: Style): readonly string[] =>
  from.feel === to.feel ? otherFields(from, to, STYLE_NAMES) : [STYLE_NAMES.feel];

/** A form takes the repeated bars away: they are not named beside it. */
const planNames = (from: Settings, to: Settings): readonly string[] =>
  otherFields(from.plan, to.plan, PLAN_NAMES).filter(
    (name) => from.formId === to.formId || name !== PLAN_NAMES.repeat,
  );

/** Harp, position and song key hang together: two of them move at a time. */
const keyNames = (from: Settings, to: Settings): readonly string[] => {
  if (from.position === to.position) return ['harp and song key'];
  return [from.harpKey === to.harpKey ? 'position and song key' : 'harp and position'];
};

const namesOf = (field: keyof Settings, from: Settings, to: Settings): readonly string[] => {
  // Putting a question off is no choice, and answering it is one of the harp or of the browser.
  if (field === 'askHarp' || field === 'keepingOffered') return [];
  if (field === 'harpKey' || field === 'position') return keyNames(from, to);
  if (field === 'style') return styleNames(from.style, to.style);
  if (field === 'plan') return planNames(from, to);
  if (field === 'mix' && isSame(from.mix.channels, to.mix.channels)) return ['volume'];
  if (field === 'trade' && from.trade.on === to.trade.on) return ['calls'];
  return [SETTINGS[field].noun];
};

/**
 * What was chosen between two settings, as it follows a verb; empty where nothing was.
 *
 * @example
 * choiceName(DEFAULT_SETTINGS, { ...DEFAULT_SETTINGS, tempo: 90 }) // 'tempo'
 */
export const choiceName = (from: Settings, to: Settings): string => {
  const fields = (Object.keys(SETTINGS) as (keyof Settings)[]).filter(
    (field) => !isSame(from[field], to[field]),
  );
  const [first = '', second, ...more] = new Set(fields.flatMap((field) => namesOf(field, from, to)));
  if (second === undefined) return first;
  return more.length === 0 ? `${first} and ${second}` : `${first} and others`;
};
