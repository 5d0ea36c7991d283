import { useRef } from 'react';
import { STANDINGS } from '../../../core/bends/bend-results';
import type { MarkedSound } from '../../../core/fit/mark-sounds';
import { POSITIONS, positionTitle, songKey } from '../../../core/harp/positions';
import { soundId } from '../../../core/harp/tab';
import { keyName } from '../../../core/theory/pitch';
import { asPitchClass } from '../../../core/theory/units';
import { DegreeChip } from '../../controls/degree-chip';
import { Fold } from '../../controls/fold';
import { LinePath } from '../../controls/line-path';
import { Panel } from '../../controls/panel';
import { soundName } from '../../controls/sound-name';
import { SoundPill } from '../../controls/sound-pill';
import { Tap } from '../../controls/tap';
import { useSelected, useSession } from '../../state/session-context';
import { useNames } from '../../state/use-names';
import { ChartSigns } from './chart-signs';
import { example, outOfReach } from './example-sounds';
import { Sign } from './sign';
import './help.css';

interface PillProps {
  readonly mark: MarkedSound;
  readonly picked?: boolean;
  readonly lit?: boolean;
}

/** A sound just as the harp map draws it; it is heard when pressed there, and so it is here. */
const Pill = ({ mark, picked = false, lit = false }: PillProps) => {
  const { commands } = useSession();
  const plain = useSelected((state) => state.settings.plainWords);
  return (
    <SoundPill
      mark={mark}
      name={soundName(mark, 'G')}
      cents={null}
      degreesOf="chord"
      plain={plain}
      lit={lit}
      picked={picked}
      tabStop
      onListen={() => commands.listen(mark.sound)}
    />
  );
};

/** A comb of one cell. */
const Cell = (props: PillProps) => (
  <div className="comb">
    <Pill {...props} />
  </div>
);

const TabSigns = () => (
  <dl className="sign-list">
    <Sign sign={<Tap sound={example('4B').sound} />}>hole 4, blow</Sign>
    <Sign sign={<Tap sound={example('4D').sound} />}>hole 4, draw</Sign>
    <Sign sign={<Tap sound={example("3D''").sound} />}>
      a bend: one stroke for every semitone the note is bent down
    </Sign>
    <Sign sign={<Tap sound={example('6OB').sound} />}>an overblow; drawn on holes 7 to 10, an overdraw</Sign>
    <Sign sign={<span className="none">–</span>}>no sound in reach gives this tone in this octave</Sign>
  </dl>
);

const DegreeSigns = () => {
  const { text } = useNames('G');
  return (
    <dl className="sign-list">
      <Sign sign={<DegreeChip degree="R" />}>
        the root, which the chord is named after: {text('G in G7')}
      </Sign>
      <Sign sign={<DegreeChip degree="3" />}>
        the third, which makes it major; ♭3 makes it minor: {text('B in G7')}
      </Sign>
      <Sign sign={<DegreeChip degree="5" />}>the fifth, safe and plain: {text('D in G7')}</Sign>
      <Sign sign={<DegreeChip degree="b7" />}>the flattened seventh, which leans on: {text('F in G7')}</Sign>
    </dl>
  );
};

const PlainSigns = () => (
  <dl className="sign-list">
    <Sign sign={<strong>Safe now</strong>}>tones you can rest on for as long as the chord lasts</Sign>
    <Sign sign={<strong>Leans well</strong>}>
      tones with a pull: they sound best when you move on to a safe one
    </Sign>
    <Sign sign={<strong>Resolves to</strong>}>where a tone of this chord goes when the next chord comes</Sign>
  </dl>
);

const LINE = [example('4B'), example('4D')];

const LineSign = () => {
  const drawing = useRef<HTMLDivElement>(null);
  return (
    <div className="drawn" ref={drawing}>
      <div className="comb">
        {LINE.map((mark) => (
          <Pill key={soundId(mark.sound)} mark={mark} />
        ))}
      </div>
      <LinePath drawing={drawing} ids={LINE.map(({ sound }) => soundId(sound))} onward={null} />
    </div>
  );
};

const StandingSigns = () => (
  <span className="standing-signs">
    {STANDINGS.map((standing) => (
      <i key={standing} data-standing={standing} />
    ))}
  </span>
);

const MapSigns = () => {
  const { text } = useNames('G');
  return (
    <>
      <p>
        The {text('C harp over G7')}, with the minor blues scale in {text('G')}. Press a sound to hear it.
      </p>
      <dl className="sign-list">
        <Sign sign={<Cell mark={example('2D')} />}>
          filled: a tone of the chord, with what it is in the chord
        </Sign>
        <Sign sign={<Cell mark={example('4B')} />}>tinted: a tone of the scale you chose</Sign>
        <Sign sign={<Cell mark={example('5B')} />}>faint: in neither</Sign>
        <Sign sign={<Cell mark={outOfReach("2D''")} />}>
          empty with dashes around it: by a technique you have switched off
        </Sign>
        <Sign sign={<Cell mark={example('6OB')} />}>a small ring: an overblow or overdraw</Sign>
        <Sign sign={<Cell mark={example("3D'")} />}>
          a dot: a blue note of the key, its flattened third, fifth or seventh
        </Sign>
        <Sign sign={<Cell mark={example('3B')} picked />}>
          a bright edge: a way to play the note you picked
        </Sign>
        <Sign sign={<Cell mark={example('3D')} lit />}>a heavy edge: the note to play now</Sign>
        <Sign sign={<StandingSigns />}>
          a line under a bend, where your results are shown: whole, it is steady; half, it is coming; dots,
          not yet (Practise, Bends)
        </Sign>
        <Sign sign={<LineSign />}>
          edges, numbers and a way between them: the line of this bar; dotted, it goes on into the next
        </Sign>
        <Sign sign={<Pill mark={example("3D''")} />}>
          on the Keys drawing an arrow says blow or draw, and strokes say how far it is bent
        </Sign>
      </dl>
    </>
  );
};

const Positions = () => {
  const names = useNames();
  return (
    <dl className="sign-list">
      {POSITIONS.map(({ number, offset, use }) => (
        <Sign key={number} sign={positionTitle(number)}>
          {offset === 0
            ? 'the song is in the key of the harp'
            : names.key(`on a C harp the song is in ${songOn(number)}`)}
          ; {use}
        </Sign>
      ))}
    </dl>
  );
};

const C = asPitchClass(0);
const songOn = (position: number): string => keyName(songKey(C, position), 'major');

const Tones = () => {
  const plain = useSelected((state) => state.settings.plainWords);
  return (
    <Fold title={plain ? 'Plain words' : 'Tones of a chord'} open>
      {plain ? <PlainSigns /> : <DegreeSigns />}
    </Fold>
  );
};

/** What every sign on the page says, drawn by what draws it there. */
export const SignsPanel = ({ onClose }: { readonly onClose: () => void }) => (
  <Panel title="Signs" onClose={onClose}>
    <Fold title="Tab" open>
      <p>Each sound as a hole and a breath, in the tab style you chose under Harp.</p>
      <TabSigns />
    </Fold>
    <Tones />
    <Fold title="The chart" open>
      <ChartSigns />
    </Fold>
    <Fold title="The harp map" open>
      <MapSigns />
    </Fold>
    <Fold title="Positions" open>
      <p>A position says how far the song’s key lies from the harp’s, in fifths.</p>
      <Positions />
    </Fold>
  </Panel>
);
