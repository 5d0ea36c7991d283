import type { CSSProperties } from 'react';
import type { FitChord, FitSound } from '../../core/fit/fit';
import { plainSounds } from '../../core/fit/plain-words';
import { Tap } from '../controls/tap';
import { useSelected } from '../state/session-context';
import { enoughFor, plainLayout, WORDS_EMS } from './tone-layout';
import { useSize } from './use-size';

const Group = ({ title, sounds }: { readonly title: string; readonly sounds: readonly FitSound[] }) => (
  <div>
    <dt>{title}</dt>
    <dd className="stage-sounds">
      {sounds.map((sound) => (
        <Tap key={sound.id} sound={sound} />
      ))}
    </dd>
  </div>
);

/** What is safe over the chord being heard and what leans, from low to high, as large as the box allows. */
export const StagePlain = ({ fit }: { readonly fit: FitChord }) => {
  const style = useSelected((state) => state.settings.tabStyle);
  const [box, size] = useSize<HTMLDivElement>();
  const { safe, leans } = plainSounds(fit);
  const groups = [safe, leans].filter((group) => group.length > 0);
  const { font, row } =
    size === null || size.width === 0
      ? { font: enoughFor(), row: 1 }
      : plainLayout(groups, size, style, enoughFor());
  return (
    <div
      className="stage-tones"
      ref={box}
      style={{ '--hole': `${font}px`, '--row-ems': row, '--words': `${WORDS_EMS}em` } as CSSProperties}
    >
      <dl className="stage-plain">
        <Group title="Safe now" sounds={safe} />
        {leans.length > 0 && <Group title="Leans well" sounds={leans} />}
      </dl>
    </div>
  );
};
