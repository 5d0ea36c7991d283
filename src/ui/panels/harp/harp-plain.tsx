import { useMemo } from 'react';
import { plainNotes } from '../../../core/fit/plain-notes';
import { positionTitle } from '../../../core/harp/positions';
import { keyName } from '../../../core/theory/pitch';
import { scaleName } from '../../../core/theory/scales';
import { useSelected } from '../../state/session-context';
import { useNames } from '../../state/use-names';

/** What the harp in hand gives without a bend: scales by position, and the chords under the mouth. */
export const HarpPlain = () => {
  const harp = useSelected((state) => state.tune.harp);
  const names = useNames();
  const { positions, chords } = useMemo(() => plainNotes(harp), [harp]);
  return (
    <>
      <ul className="rows">
        {positions
          .filter(({ scales }) => scales.some(({ wholeOctaves }) => wholeOctaves > 0))
          .map(({ position, key, scales }) => (
            <li key={position}>
              <strong>
                {names.key(keyName(key, 'major'))}, {positionTitle(position)}
              </strong>
              :{' '}
              {scales
                .filter(({ wholeOctaves }) => wholeOctaves > 0)
                .map(({ id }) => scaleName(id))
                .join(', ')}
            </li>
          ))}
      </ul>
      <p>
        <strong>Chords</strong>: {chords.map(({ label, name }) => names.text(`${label} ${name}`)).join('; ')}.
      </p>
    </>
  );
};
