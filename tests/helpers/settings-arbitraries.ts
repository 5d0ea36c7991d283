import fc from 'fast-check';
import { DYNAMICS } from '../../src/core/arranger/energy';
import { ARCS, COUNT_INS, ENDINGS, INTROS } from '../../src/core/arranger/program';
import { TURNAROUNDS } from '../../src/core/arranger/turnarounds';
import { BEND_LEADS, BEND_LEVELS } from '../../src/core/bends/bend-choice';
import { FORM_IDS } from '../../src/core/chart/forms';
import { FEEL_IDS } from '../../src/core/feels/feels';
import { INTONATION_IDS } from '../../src/core/harp/intonation';
import { TAB_STYLES } from '../../src/core/harp/tab';
import { TUNINGS } from '../../src/core/harp/tunings';
import { LINE_KINDS, PACES } from '../../src/core/lines/line-slots';
import { LINE_TASTES } from '../../src/core/lines/line-tastes';
import { KEY_USES } from '../../src/core/midi/keyboard';
import { OUT_CHOICES } from '../../src/core/midi/out-messages';
import { PEDAL_ACTIONS } from '../../src/core/midi/pedals';
import { CLICKS } from '../../src/core/players/click';
import { STOP_TIMES, TIMES } from '../../src/core/players/style';
import { CALL_LEVELS } from '../../src/core/practice/call-levels';
import { CLASS_LEVELS, LONGEST_LEVEL, SHORTEST_NOTES } from '../../src/core/practice/class-levels';
import { ANSWER_VOICES, TRADE_MODES } from '../../src/core/practice/trade-modes';
import { PLAN_LIMITS, TRADE_PLANS } from '../../src/core/practice/trade-plan';
import { PART_IDS } from '../../src/core/score/score';
import { SOUNDINGS } from '../../src/core/score/soundings';
import { BASS_VOICES, CHORD_VOICES, KITS, SECOND_VOICES } from '../../src/core/score/voices';
import { OWN_SOUND_PARTS, RECORDED_PARTS } from '../../src/core/settings/mix';
import { ANNOUNCEMENTS, BESIDE_TAB, DRAWINGS, LOOKS } from '../../src/core/settings/page-settings';
import { AFTER_ANSWERS, EAR_SHOWS, TAKE_MINUTES } from '../../src/core/settings/practice-settings';
import type { Settings } from '../../src/core/settings/settings';
import { MOST_LAG } from '../../src/core/settings/sound-settings';
import { NOTE_SYSTEMS } from '../../src/core/theory/note-names';
import { asBpm, asHz, asPitchClass } from '../../src/core/theory/units';

const key = fc.nat(11).map(asPitchClass);
const tempo = fc.integer({ min: 40, max: 280 }).map(asBpm);
const seed = fc.nat(2 ** 31);
const text = fc.string({ maxLength: 60 });
const gain = fc.integer({ min: 0, max: 100 }).map((percent) => percent / 100);
const channel = fc.record({
  gain,
  muted: fc.boolean(),
  solo: fc.boolean(),
  pan: fc.integer({ min: -4, max: 4 }).map((quarter) => quarter / 4),
});
const channels = fc.record({
  drums: channel,
  bass: channel,
  chords: channel,
  second: channel,
  lead: channel,
  click: channel,
});
const pushes = fc
  .uniqueArray(fc.tuple(fc.constantFrom(...PART_IDS), fc.integer({ min: -60, max: 60 })), {
    selector: ([part]) => part,
  })
  .map((entries) => Object.fromEntries(entries));

/** A harp and what belongs to its reeds. */
const harp = fc
  .record({
    tuning: fc
      .constantFrom(...TUNINGS)
      .map(({ blow, draw }) => ({ id: 'mine', name: 'Hall harp', blow: [...blow], draw: [...draw] })),
    own: fc.boolean(),
    cents: fc.integer({ min: -40, max: 40 }),
    named: fc.constantFrom(...INTONATION_IDS),
    valved: fc.uniqueArray(fc.integer({ min: 1, max: 10 }), { maxLength: 10 }),
  })
  .map(({ tuning, own, cents, named, valved }) => ({
    tuning,
    valved,
    intonation: own
      ? { cents: { blow: tuning.blow.map(() => cents), draw: tuning.draw.map(() => 0 - cents) } }
      : named,
  }));

/** One arbitrary a setting; the compiler asks for those of new ones. */
const fields: {
  readonly [Name in Exclude<keyof Settings, 'tuning' | 'intonation' | 'valved'>]: fc.Arbitrary<
    Settings[Name]
  >;
} = {
  harpKey: key,
  harpOctave: fc.integer({ min: -2, max: 1 }),
  stretch: fc.nat(5),
  reference: fc.integer({ min: 440, max: 446 }).map(asHz),
  position: fc.integer({ min: 1, max: 12 }),
  technique: fc.record({
    drawBends: fc.boolean(),
    blowBends: fc.boolean(),
    overbends: fc.boolean(),
    off: fc.array(text, { maxLength: 5 }),
  }),
  midi: fc.record({
    on: fc.boolean(),
    use: fc.constantFrom(...KEY_USES),
    split: fc.nat(127),
    pedals: fc.uniqueArray(
      fc.record({
        kind: fc.constantFrom('key', 'control', 'program'),
        channel: fc.integer({ min: 1, max: 16 }),
        number: fc.nat(127),
        action: fc.constantFrom(...PEDAL_ACTIONS),
      }),
      { selector: ({ action }) => action, maxLength: 4 },
    ),
    out: fc.array(fc.oneof(fc.constantFrom(...OUT_CHOICES), text), { maxLength: 4 }),
    to: text,
    follow: fc.boolean(),
  }),
  askHarp: fc.boolean(),
  keepingOffered: fc.boolean(),
  songPinned: fc.boolean(),
  changesWait: fc.boolean(),
  sameTake: fc.boolean(),
  bandListens: fc.boolean(),
  harpLocked: fc.boolean(),
  formId: fc.oneof(fc.constantFrom(...FORM_IDS), text),
  tempo,
  style: fc.record({
    feel: fc.constantFrom(...FEEL_IDS),
    bass: fc.constantFrom(...BASS_VOICES),
    chords: fc.constantFrom(...CHORD_VOICES),
    second: fc.constantFrom('none' as const, ...SECOND_VOICES),
    kit: fc.constantFrom(...KITS),
    swing: fc.constantFrom<Settings['style']['swing']>('feel', 'by tempo', 'hard ride', 1, 2.5),
    push: pushes,
    time: fc.constantFrom(...TIMES),
    stopTime: fc.constantFrom(...STOP_TIMES),
    leaveRoom: fc.boolean(),
    seed,
  }),
  plan: fc.record({
    countInBars: fc.constantFrom(...COUNT_INS),
    intro: fc.constantFrom(...INTROS),
    choruses: fc.option(fc.integer({ min: 1, max: 200 })),
    arc: fc.constantFrom(...ARCS),
    dynamics: fc.constantFrom(...DYNAMICS),
    turnarounds: fc.constantFrom(...TURNAROUNDS),
    click: fc.constantFrom(...CLICKS),
    ending: fc.constantFrom(...ENDINGS),
    ritard: fc.boolean(),
    repeat: fc.constantFrom(null, { from: 0, to: 3 }, { from: 5, to: 5 }),
    countBetween: fc.boolean(),
    keys: fc.oneof(
      fc.constantFrom({ kind: 'same' } as const, { kind: 'fourths' } as const),
      fc.record({
        kind: fc.constant('list' as const),
        keys: fc.array(key, { minLength: 1, maxLength: 12 }),
      }),
    ),
    tempo: fc.oneof(
      fc.constant({ kind: 'fixed' } as const),
      fc.record({
        kind: fc.constant('ramp' as const),
        from: tempo,
        step: fc.integer({ min: 1, max: 60 }),
        every: fc.integer({ min: 1, max: 20 }),
      }),
      fc.record({ kind: fc.constant('alternate' as const), slow: tempo }),
    ),
    dropOut: fc.constantFrom(null, { play: 4, rest: 4 }),
    sounding: fc.constantFrom(...SOUNDINGS),
  }),
  mix: fc.record({ channels, master: gain }),
  bandFollowsHarp: fc.boolean(),
  speakerLag: fc.integer({ min: 0, max: MOST_LAG }),
  ownSounds: fc.uniqueArray(fc.constantFrom(...OWN_SOUND_PARTS), { maxLength: 4 }),
  computedVoices: fc.uniqueArray(fc.constantFrom(...RECORDED_PARTS), { maxLength: 3 }),
  line: fc.record({
    kind: fc.constantFrom('none', ...LINE_KINDS),
    pace: fc.constantFrom(...PACES),
    taste: fc.constantFrom(...LINE_TASTES.map(({ id }) => id)),
    seed,
    heard: fc.boolean(),
  }),
  trade: fc.record({ on: fc.boolean(), calls: fc.string({ maxLength: 300 }) }),
  classLevels: fc.array(
    fc.record({
      name: fc.string({ maxLength: LONGEST_LEVEL }),
      technique: fc.record({
        drawBends: fc.boolean(),
        blowBends: fc.boolean(),
        overbends: fc.boolean(),
        off: fc.constant([]),
      }),
      shortest: fc.constantFrom(...SHORTEST_NOTES),
    }),
    { minLength: CLASS_LEVELS.length, maxLength: CLASS_LEVELS.length },
  ),
  partner: fc.record({
    plan: fc.oneof(fc.constantFrom(...TRADE_PLANS), fc.string({ maxLength: PLAN_LIMITS.text })),
    mode: fc.constantFrom(...TRADE_MODES),
    level: fc.constantFrom(...CALL_LEVELS),
    stretch: fc.boolean(),
    after: fc.constantFrom(...AFTER_ANSWERS),
    voice: fc.constantFrom(...ANSWER_VOICES),
  }),
  microphone: fc.option(text),
  bends: fc.record({
    level: fc.constantFrom(...BEND_LEVELS),
    lead: fc.constantFrom(...BEND_LEADS),
    byResults: fc.boolean(),
  }),
  takeMinutes: fc.constantFrom(...TAKE_MINUTES),
  earShows: fc.constantFrom(...EAR_SHOWS),
  tabStyle: fc.constantFrom(...TAB_STYLES.map(({ id }) => id)),
  besideTab: fc.constantFrom(...BESIDE_TAB),
  noteNames: fc.constantFrom(...NOTE_SYSTEMS),
  plainWords: fc.boolean(),
  drawing: fc.constantFrom(...DRAWINGS),
  mirrored: fc.boolean(),
  largeHoles: fc.boolean(),
  announcements: fc.constantFrom(...ANNOUNCEMENTS),
  showCents: fc.boolean(),
  layer: text,
  ladder: fc.record({
    by: fc.constantFrom<Settings['ladder']['by']>('off', 'clean', 'count'),
    step: fc.integer({ min: 1, max: 20 }),
    every: fc.integer({ min: 1, max: 12 }),
    top: fc.integer({ min: 40, max: 280 }),
  }),
  fromMemory: fc.boolean(),
  keepLog: fc.boolean(),
  look: fc.constantFrom(...LOOKS),
};

/** Settings that a player could have, of every kind. */
export const anySettings: fc.Arbitrary<Settings> = fc
  .tuple(fc.record(fields), harp)
  .map(([rest, reeds]) => ({ ...rest, ...reeds }));
