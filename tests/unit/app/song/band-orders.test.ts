import { describe, expect, it } from 'vitest';
import { findTuning } from '../../../../src/core/harp/tunings';
import { DEFAULT_MIX, DEFAULT_SETTINGS } from '../../../../src/core/settings/defaults';
import type { Settings } from '../../../../src/core/settings/settings';
import { audibleSoundOf, programOf } from '../../../../src/core/song/song-program';
import { asBpm, asHz, asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const open = () => {
  const band = createFakeBand();
  const session = createSession({
    band,
    kept: createKeptValues(() => createFakeStorage(), new EventTarget()),
    newSeed: () => 77,
    later: () => () => {},
    takeAway: createFakeTakeAway(),
    ownSounds: createFakeOwnSounds(),
  });
  return { band, state: session.store.getState, commands: session.commands };
};

const D = DEFAULT_SETTINGS;
const { id, name, blow, draw } = findTuning('natural-minor') ?? D.tuning;

/** Another value for every choice; the type asks for each field there is and each that will be. */
const OTHERS: { readonly [Field in keyof Settings]: readonly Settings[Field][] } = {
  harpKey: [asPitchClass(5)],
  bandListens: [true],
  harpOctave: [-1],
  tuning: [{ id, name, blow, draw }],
  intonation: ['just-second', { cents: { blow: blow.map(() => 9), draw: draw.map(() => -9) } }],
  stretch: [2],
  valved: [[1, 2, 3, 4, 5, 6, 7, 8, 9, 10]],
  bandFollowsHarp: [true],
  position: [3],
  askHarp: [true],
  midi: [{ ...D.midi, use: 'harp' }],
  keepingOffered: [true],
  songPinned: [true],
  sameTake: [true],
  harpLocked: [true],
  changesWait: [true],
  formId: ['standard', 'eight-v-second'],
  tempo: [asBpm(80)],
  style: [
    { ...D.style, feel: 'slow-12-8' },
    { ...D.style, seed: 5 },
    { ...D.style, chords: 'organ' },
  ],
  plan: [
    { ...D.plan, keys: { kind: 'list', keys: [asPitchClass(2), asPitchClass(9)] } },
    { ...D.plan, repeat: { from: 2, to: 5 } },
    { ...D.plan, sounding: 'click' },
  ],
  technique: [
    { ...D.technique, drawBends: false, off: ['4B', '2D'] },
    { ...D.technique, blowBends: true, overbends: true },
  ],
  line: [
    { ...D.line, kind: 'chord tones', pace: 4, heard: true },
    { ...D.line, taste: 'bold' },
  ],
  trade: [
    { on: true, calls: '' },
    { on: true, calls: "2 3' 4 -4" },
  ],
  bends: [{ level: 'first', lead: 'drone', byResults: true }],
  classLevels: [D.classLevels.map((level) => ({ ...level, name: `${level.name} too` }))],
  partner: [
    { ...D.partner, plan: '1+1', level: 3 },
    { ...D.partner, mode: 'lead' },
  ],
  microphone: ['m'],
  takeMinutes: [5],
  earShows: ['after'],
  tabStyle: ['letters'],
  besideTab: ['both'],
  noteNames: ['german'],
  plainWords: [true],
  drawing: ['keys'],
  mirrored: [true],
  largeHoles: [true],
  announcements: ['places'],
  showCents: [true],
  layer: ['none'],
  ladder: [{ by: 'clean', step: 6, every: 1, top: 140 }],
  fromMemory: [true],
  keepLog: [false],
  look: ['night'],
  reference: [asHz(443)],
  mix: [{ ...DEFAULT_MIX, master: 0.3 }],
  ownSounds: [['bass']],
  speakerLag: [180],
  computedVoices: [['drums', 'chords']],
};
const FIELDS = Object.keys(OTHERS) as readonly (keyof Settings)[];

/** All that is bent by the breath: the search for a line grows with the square of the sounds, and valves bend too. */
const bends = { drawBends: true, blowBends: true, overbends: false, off: [] };
/** What else is chosen: most fields only count while the harp voice plays. */
const BASES: Readonly<Record<string, Partial<Settings>>> = {
  'the band alone': {},
  'calls made up': { trade: { on: true, calls: '' }, technique: bends },
  'a line heard in two keys': {
    line: { ...D.line, kind: 'chord tones', heard: true },
    plan: { ...D.plan, keys: { kind: 'list', keys: [asPitchClass(5)] } },
    technique: bends,
  },
};

const asText = (value: unknown): string => JSON.stringify(value);

describe('what the band is told', () => {
  for (const [title, base] of Object.entries(BASES)) {
    it.each(FIELDS)(`while playing ${title}: whatever %s changes in program or sound`, async (field) => {
      for (const other of OTHERS[field]) {
        const { band, state, commands } = open();
        commands.choose(base);
        await commands.play();
        const [program, sound] = [asText(band.programs.at(-1)), asText(audibleSoundOf(state()))];
        const before = band.asked.length;
        commands.choose({ [field]: other });
        const after = asText(programOf(state()));
        expect(band.asked.slice(before)).toEqual(after === program ? [] : ['change']);
        expect(asText(band.programs.at(-1))).toBe(after);
        if (asText(audibleSoundOf(state())) !== sound)
          expect(asText(band.sounds.at(-1))).toBe(asText(audibleSoundOf(state())));
      }
    });
  }

  it('hears of valves chosen while trading, as they change the calls', async () => {
    const { band, state, commands } = open();
    commands.choose({ trade: { on: true, calls: '' }, technique: bends });
    await commands.play();
    const before = asText(programOf(state()).leads);
    commands.choose({ valved: OTHERS.valved[0] ?? [] });
    expect(asText(programOf(state()).leads)).not.toBe(before);
    expect(band.asked.at(-1)).toBe('change');
  });
});
