import { brushes } from '../drums/brushes';
import { sticks } from '../drums/sticks';
import type { Voice, VoiceId } from '../synthesis/voice';
import { click } from './click';
import { electricPiano } from './electric-piano';
import { fingeredBass } from './fingered-bass';
import { guitar } from './guitar';
import { harmonica } from './harmonica';
import { organ } from './organ';
import { piano } from './piano';
import { uprightBass } from './upright-bass';

/** Every voice of the band by its name. */
export const VOICES: Readonly<Record<VoiceId, Voice>> = {
  'upright-bass': uprightBass,
  'fingered-bass': fingeredBass,
  piano,
  'electric-piano': electricPiano,
  organ,
  guitar,
  harmonica,
  sticks,
  brushes,
  click,
};
