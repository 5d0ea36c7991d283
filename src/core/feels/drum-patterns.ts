import type { DrumLane } from '../score/drum-kit';
import type { FeelId } from './feel';

/**
 * Drum patterns by feel: light, normal, driving. Four-beat bars, `|` bar line, one mark a step: g ghost, o soft,
 * x played, X accent, ? a ghost now and then, ! a full stroke now and then, . rest.
 *
 * Sources: shuffle and straight figures "Learn & Master Drums", session 6, and a 2015 survey of drum feels; double shuffle: an
 * introductory drum course's lesson on shuffles; slow 12/8 "How many shades of blue in blues drumming?"; hi-hat on
 * the backbeat under the ride, introduction of the ISMIR 2015 swing-ratio study; rhumba "Blues rumba", Drum!;
 * second line and train "Vital beats every drummer must know", Drum!, and a 2020 drum lesson on developing street parade
 * grooves. Ghosts, feathered kick, levels and the rest: common practice, no source.
 */
export type DrumPattern = Readonly<Partial<Record<DrumLane, string>>>;

/** Patterns to choose from, indexed by level. */
export type DrumBook = readonly [readonly DrumPattern[], readonly DrumPattern[], readonly DrumPattern[]];

export const DRUM_BOOK: Readonly<Record<FeelId, DrumBook>> = {
  shuffle: [
    [
      { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x . x .' },
      { hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' },
    ],
    [
      { hat: 'xo Xo xo Xo', snare: '.. X. .? X?', kick: 'x o x o' },
      { hat: 'xo Xo xo Xo', snare: '.? X. .? X.', kick: 'x. .. x! ..' },
      { ride: 'xo Xo xo Xo', snare: '.. X? .. X.', kick: 'x o x o', foot: '. x . x' },
    ],
    [
      { ride: 'Xo Xo Xo Xo', snare: '.g Xg .g X?', kick: 'x. x. xo x.', foot: '. x . x' },
      { ride: 'Xo Xo Xo Xo', snare: '.? Xg .? Xg', kick: 'X. x. x! x!', foot: '. x . x' },
    ],
  ],
  'slow-12-8': [
    [
      { hat: 'xoo xoo xoo xoo', stick: '. X . X', kick: 'x . x .' },
      { hat: 'xoo xoo xoo xoo', stick: '. X . X', kick: 'x.. ... x.? ...' },
    ],
    [
      { hat: 'xoo Xoo xoo Xoo', snare: '... X.. ..? X..', kick: 'x.. ... x.o ...' },
      { ride: 'xoo Xoo xoo Xoo', snare: '... X.. ..? X..', kick: 'x.. ..o x.. ...', foot: '. x . x' },
    ],
    [
      { ride: 'Xoo Xoo Xoo Xoo', snare: '..g X.. ..g X.?', kick: 'x.o ..o x.o ..!', foot: '. x . x' },
      { ride: 'Xoo Xoo Xoo Xoo', snare: '..? X.. .?g X.g', kick: 'x.o ... x.x ...', foot: '. x . x' },
    ],
  ],
  swing: [
    [
      { ride: 'x. xo x. xo', foot: '. x . x', kick: 'g g g g' },
      { ride: 'x. xo x. xo', foot: '. x . x', stick: '.. .. .. ?.', kick: 'g g g g' },
    ],
    [
      { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.. .? .. .?', kick: 'g. g. g. g?' },
      { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? .. .g ..', kick: 'g g g g' },
      { ride: 'x. Xo x. Xo', foot: '. x . x', stick: '. . . X', snare: '.. .? .. ..', kick: 'g g g g' },
    ],
    [
      { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '.? o. .? o?', kick: 'g. g! g. g.' },
      { ride: 'xo Xo xo Xo', foot: '. x . x', snare: '.. .g .g o.', kick: 'o. g. o. g!' },
    ],
  ],
  straight: [
    [
      { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. x. ..' },
      { hat: 'x x x x', stick: '. X . X', kick: 'x. .. xo ..' },
    ],
    [
      { hat: 'xo xo xo xo', snare: '. X . X', kick: 'x. .. xx ..' },
      { hat: 'xo xo xo xo', snare: '.. X. .? X.', kick: 'x. .x .x ..' },
      { hat: 'xo xo xo xo', snare: '.. X? .. X.', kick: 'x. .! x! ..' },
    ],
    [
      { ride: 'xo Xo xo Xo', snare: '.. X? .? X?', kick: 'x. .x xx ..', foot: '. x . x' },
      { hat: 'xo xo xo x.', open: '.. .. .. .x', snare: '.. X. .? X.', kick: 'x. .x .x .!' },
    ],
  ],
  'double-shuffle': [
    [{ hat: 'xo xo xo xo', snare: 'gg og gg og', kick: 'x . x .' }],
    [
      { hat: 'xo xo xo xo', snare: 'go Xo go Xo', kick: 'x . x .' },
      { ride: 'xo xo xo xo', snare: 'go Xo go Xo', kick: 'x. .. x! ..', foot: '. x . x' },
    ],
    [
      { ride: 'Xo Xo Xo Xo', snare: 'oo Xo oo Xo', kick: 'x o x o', foot: '. x . x' },
      { ride: 'Xo Xo Xo Xo', snare: 'go Xo go Xo', kick: 'x. x. xo x.', foot: '. x . x' },
    ],
  ],
  jump: [
    [
      { hat: 'x. xo x. xo', stick: '. X . X', kick: 'x . x .' },
      { ride: 'x. xo x. xo', foot: '. x . x', stick: '. X . X', kick: 'x . x .' },
    ],
    [
      { ride: 'x. Xo x. Xo', foot: '. x . x', snare: '. X . X', kick: 'x o x o' },
      { hat: 'x. Xo x. Xo', snare: '.. X. .? X.', kick: 'x . x .' },
    ],
    [
      { ride: 'xo Xo xo Xo', foot: '. x . x', snare: '.? X. .? X?', kick: 'x x x x' },
      { ride: 'X. Xo X. Xo', foot: '. x . x', snare: '.. Xg .? X.', kick: 'x. x. x. x!' },
    ],
  ],
  boogie: [
    [{ hat: 'xo xo xo xo', stick: '. X . X', kick: 'o o o o' }],
    [
      { hat: 'xo Xo xo Xo', snare: '.. X. .. X?', kick: 'x x x x' },
      { ride: 'xo Xo xo Xo', snare: '.? X. .. X.', kick: 'x o x o', foot: '. x . x' },
    ],
    [
      { ride: 'Xo Xo Xo Xo', snare: '.g X. .g X?', kick: 'x x x x', foot: '. x . x' },
      { ride: 'Xo Xo Xo Xo', snare: '.. Xg .? Xg', kick: 'x. x. x. x!', foot: '. x . x' },
    ],
  ],
  rhumba: [
    [{ hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .o .. o.' }],
    [
      { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .x .. o.', high: '.. .. .. .o' },
      { hat: 'xo xo xo xo', stick: '.. X. .. X.', kick: 'x. .x .. .!', high: '.. .. .. xx' },
    ],
    [
      {
        ride: 'xo xo xo xo',
        snare: '.. X. .. X.',
        kick: 'x. .x .. x.',
        high: '.. .. .. .x',
        low: '.. .. .x ..',
      },
      {
        bell: 'x. x. x. x.',
        snare: '.. X. .? X.',
        kick: 'x. .x .. x.',
        high: '.. .? .. xx',
        foot: '. x . x',
      },
    ],
  ],
  'second-line': [
    [
      { snare: 'ogg? ggo? ggog gog?', kick: 'x... ..o. .... ....', foot: '. x . x' },
      {
        stick: 'X..X ..X. ..X. X...',
        kick: 'x... ..x. .... ....',
        foot: '. x . x',
        hat: 'o.o. o.o. o.o. o.o.',
      },
    ],
    [
      { snare: 'XggX ggXg g?xg xgg?', kick: 'x..o ..x. .... ....', foot: '. x . x' },
      { snare: 'XggX g?xg ggXg xg?g', kick: 'x... ..x. ..!. x...', foot: '. x . x' },
    ],
    [
      { snare: 'XggX ggXg ggxg XggX', kick: 'x..x ..x. ..x. x...', foot: '. x . x' },
      {
        snare: 'XgoX goXg goXg XooX',
        kick: 'x..x ..x. .... x.!.',
        foot: '. x . x',
        bell: 'o.o. o.o. o.o. o.o.',
      },
    ],
  ],
  train: [
    [{ snare: 'ggog ggog ggog ggog', kick: 'o . o .' }],
    [
      { snare: 'ogxg ogXg ogxg ogXg', kick: 'x o x o' },
      { snare: 'ggxg ggXg ggxg gxgX', kick: 'x o x o' },
    ],
    [
      { snare: 'ogxo ogXo ogxo ogXx', kick: 'x x x x' },
      { snare: 'ogxg oxgX ogxg oxXg', kick: 'x o x o' },
    ],
  ],
  rock: [
    [{ hat: 'xo xo xo xo', stick: '. X . X', kick: 'x. .. x. ..' }],
    [
      { hat: 'Xx Xx Xx Xx', snare: '. X . X', kick: 'x. .. xx ..' },
      { hat: 'Xx Xx Xx Xx', snare: '.. X. .? X.', kick: 'x. .x .x .!' },
    ],
    [
      { open: 'x x x x', snare: '. X . X', kick: 'xx .. xx .!' },
      { ride: 'Xx Xx Xx Xx', snare: '.? X. .? X.', kick: 'x. .x xx ..' },
    ],
  ],
  'minor-slow': [
    [
      { hat: 'xogo xogo xogo xogo', stick: '. X . X', kick: 'x... .... x... ....' },
      { hat: 'xo xo xo xo', stick: '. X . X', kick: 'x... ...o x... ....' },
    ],
    [
      { hat: 'xogo xogo xogo xogo', snare: '.... X..? ...? X...', kick: 'x... ...x x... ....' },
      { hat: 'xogo xogo xogo xogo', snare: '.... X..? .?.. X...', kick: 'x..o .... ..x. ....' },
    ],
    [
      {
        ride: 'xogo xogo xogo xogo',
        snare: '...? X..g .g.? X..g',
        kick: 'x..o ...x x... ..!.',
        foot: '. x . x',
      },
      {
        hat: 'xogo xogo xogo xog.',
        open: '.... .... .... ...x',
        snare: '.... X..g .g.. X...',
        kick: 'x..x ..x. ..x. ....',
      },
    ],
  ],
};
