import type { Voice } from '../synthesis/voice';
import { HAT_CLOSED, HAT_OPEN, HAT_PEDAL } from './cymbal-hats';
import { CRASH, RIDE, RIDE_BELL, TAMBOURINE } from './cymbal-plates';
import { BONGO_HIGH, BONGO_LOW, CONGA_HIGH, CONGA_LOW, CONGA_MUTE } from './drum-congas';
import { type KitSounds, kitLoudness, kitVoice } from './drum-keys';
import { KICK, KICK_DEEP } from './drum-kicks';
import { COWBELL, MARACAS } from './drum-percussion';
import { SIDE_STICK, SNARE, SNARE_CRISP } from './drum-snares';
import {
  TOM_FLOOR_HIGH,
  TOM_FLOOR_LOW,
  TOM_HIGH,
  TOM_HIGH_MIDDLE,
  TOM_LOW,
  TOM_LOW_MIDDLE,
} from './drum-toms';
import { CLAVES, WOOD_BLOCK_HIGH, WOOD_BLOCK_LOW } from './drum-wood';

/** The kit played with sticks, by General MIDI percussion key. */
export const STICK_SOUNDS: KitSounds = new Map([
  [35, KICK_DEEP],
  [36, KICK],
  [37, SIDE_STICK],
  [38, SNARE],
  [40, SNARE_CRISP],
  [41, TOM_FLOOR_LOW],
  [42, HAT_CLOSED],
  [43, TOM_FLOOR_HIGH],
  [44, HAT_PEDAL],
  [45, TOM_LOW],
  [46, HAT_OPEN],
  [47, TOM_LOW_MIDDLE],
  [48, TOM_HIGH_MIDDLE],
  [49, CRASH],
  [50, TOM_HIGH],
  [51, RIDE],
  [53, RIDE_BELL],
  [54, TAMBOURINE],
  [56, COWBELL],
  [60, BONGO_HIGH],
  [61, BONGO_LOW],
  [62, CONGA_MUTE],
  [63, CONGA_HIGH],
  [64, CONGA_LOW],
  [70, MARACAS],
  [75, CLAVES],
  [76, WOOD_BLOCK_HIGH],
  [77, WOOD_BLOCK_LOW],
]);

/** Drum kit and hand percussion played with sticks and hands; keys it lacks have stand-ins (`soundOfKey`). */
export const sticks: Voice = kitVoice(STICK_SOUNDS);

export const sticksLoudness = kitLoudness(STICK_SOUNDS);
