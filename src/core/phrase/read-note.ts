import type { Problem, TextSpan } from '../chart-text/chart-problems';
import type { PhraseManner, PhraseSound } from './phrase';
import { mixedBreath, noManner, noNote } from './phrase-problems';
import { DEEPEST_BEND, readTab } from './read-tab';

/** A word of a phrase, its length apart. */
export interface ReadNote {
  /** Empty for a rest, and for what could not be read. */
  readonly sounds: readonly PhraseSound[];
  readonly manner: PhraseManner;
  readonly problems: readonly Problem[];
}

/** Most points of a curve: a whole note in thirty-seconds, more than a mouth can do. */
export const MOST_POINTS = 32;

const REST: ReadNote = { sounds: [], manner: {}, problems: [] };

const unread = (problem: Problem): ReadNote => ({ ...REST, problems: [problem] });

const readGroup = (inner: string, accent: boolean, span: TextSpan): ReadNote => {
  const parts = inner.split(/[\s,]+/).filter((part) => part !== '');
  const sounds = parts.flatMap((part) => readTab(part) ?? []);
  if (sounds.length === 0 || sounds.length < parts.length) return unread(noNote(span));
  if (sounds.some(({ breath }) => breath !== sounds[0]?.breath)) return unread(mixedBreath(span));
  return { sounds, manner: accent ? { accent } : {}, problems: [] };
};

interface Point {
  readonly sound: PhraseSound;
  /** Below the reed's natural note. */
  readonly cents: number;
}

/** `-3'-30c`: a sound, and cents further down. */
const readPoint = (text: string): Point | null => {
  const [, tabText = '', cents = '0'] = /^(.*?)(?:-(\d{1,2})c)?$/.exec(text) ?? [];
  const sound = readTab(tabText);
  if (sound === null) return null;
  const depth = 100 * sound.bend + Number(cents);
  return sound.technique === 'overbend' && Number(cents) > 0 ? null : { sound, cents: depth };
};

/** Why points do not make a curve; null where they do. */
const curveFault = (points: readonly Point[]): string | null => {
  const [first] = points;
  if (points.length > MOST_POINTS) return `a curve has at most ${MOST_POINTS} points`;
  if (points.some(({ sound }) => sound.technique === 'overbend')) return 'an overbend has no curve';
  const oneReed = points.every(
    ({ sound }) => sound.hole === first?.sound.hole && sound.breath === first.sound.breath,
  );
  if (!oneReed) return 'a curve stays on one hole and breath';
  return points.some(({ cents }) => cents >= 100 * (DEEPEST_BEND + 1)) ? 'no reed bends so far' : null;
};

/** The hole of a natural note beside another sound, on its breath. */
const neighbour = (text: string, beside: PhraseSound): number | null => {
  const sound = readTab(text);
  const fits = sound !== null && sound.technique === 'natural' && sound.breath === beside.breath;
  return fits && sound.hole !== beside.hole ? sound.hole : null;
};

const PARTS = /^(?:(?<slide>[^~*]*?)\.\.)?(?<core>[^*]*?)(?:\*(?<shake>.*))?$/;

const readSingle = (text: string, accent: boolean, span: TextSpan): ReadNote => {
  const { slide, core = '', shake } = PARTS.exec(text)?.groups ?? {};
  const texts = core.split('~');
  const points = texts.flatMap((each) => readPoint(each) ?? []);
  const [first] = points;
  if (first === undefined || points.length < texts.length) return unread(noNote(span));
  const { sound } = first;
  const curved = points.length > 1 || first.cents > 100 * sound.bend;
  const from = slide === undefined ? undefined : neighbour(slide, sound);
  const other = shake === undefined ? undefined : neighbour(shake, sound);
  const why =
    (curved ? curveFault(points) : null) ??
    (from === null ? 'a slide begins on another hole of the same breath' : null) ??
    (other === null ? 'a shake goes to another hole of the same breath' : null) ??
    (curved && other !== undefined ? 'a shake has no curve' : null);
  if (why !== null) return { sounds: [sound], manner: {}, problems: [noManner(span, why)] };
  const manner: PhraseManner = {
    ...(accent && { accent }),
    ...(curved && { curve: points.map(({ cents }) => cents) }),
    ...(typeof from === 'number' && { slide: from }),
    ...(typeof other === 'number' && { shake: other }),
  };
  return { sounds: [sound], manner, problems: [] };
};

/** Reads a note or rest without its length, such as `-4~-4'`, `(-2 -5)>` or `r`. Never throws. */
export const readNote = (text: string, span: TextSpan): ReadNote => {
  if (/^r$/i.test(text)) return REST;
  const accent = text.endsWith('>');
  const plain = accent ? text.slice(0, -1) : text;
  const inner = /^\((.*)\)$/.exec(plain)?.[1];
  return inner === undefined ? readSingle(plain, accent, span) : readGroup(inner, accent, span);
};
