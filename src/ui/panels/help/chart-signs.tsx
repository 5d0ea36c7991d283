import type { NoteName } from '../../../core/theory/chord';
import { chordOf } from '../../../core/theory/chords';
import { ChordText } from '../../controls/chord-text';
import { Sign } from './sign';

const named = (root: NoteName, quality: string, bass?: NoteName) => (
  <ChordText tonic="G" chord={chordOf(bass === undefined ? { root, quality } : { root, quality, bass })} />
);

/** Signs of the chart, drawn as the chart draws them. */
export const ChartSigns = () => (
  <dl className="sign-list chart-signs">
    <Sign sign={named('G', '')}>a letter alone: a major chord</Sign>
    <Sign sign={named('G', 'm')}>m: a minor chord</Sign>
    <Sign sign={named('G', '7')}>7: with a flattened seventh; without m, the usual chord of a blues</Sign>
    <Sign sign={named('G', 'maj7')}>maj7: with the seventh a semitone below the octave</Sign>
    <Sign sign={named('G', 'dim7')}>°7: a diminished chord, minor thirds one upon another</Sign>
    <Sign sign={named('G', '7b9')}>♭5, ♯5, ♭9 and the like: that tone a semitone lower or higher</Sign>
    <Sign sign={named('C', '', 'E')}>after a slash: the bass plays this note under the chord</Sign>
    <Sign sign={<span className="repeat-sign">repeat to 4</span>}>
      from here to bar 4 again and again; click a bar outside to go on
    </Sign>
    <Sign
      sign={
        <span className="beats">
          <i data-on="true" />
          <i data-on="true" />
          <i />
          <i />
        </span>
      }
    >
      the beats of the bar that plays, filled as they are heard
    </Sign>
  </dl>
);
