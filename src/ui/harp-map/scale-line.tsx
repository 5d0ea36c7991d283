import { useMemo } from 'react';
import { type ScaleRun, scaleTab } from '../../core/fit/scale-tab';
import type { Harp } from '../../core/harp/harp';
import type { TechniqueChoice } from '../../core/harp/reach';
import type { Scale } from '../../core/theory/scales';
import { Tap } from '../controls/tap';
import { useNames } from '../state/use-names';

interface Props {
  readonly scale: Scale;
  readonly harp: Harp;
  readonly technique: TechniqueChoice;
  /** Whether the map shows blue notes, so that their sign is explained. */
  readonly blues: boolean;
}

/** The scale as it lies on the harp: the first whole octave, or the fullest where none is whole. */
export const ScaleLine = ({ scale, harp, technique, blues }: Props) => {
  const runs = useMemo(() => scaleTab({ scale, harp, technique }), [scale, harp, technique]);
  const names = useNames();
  const gaps = ({ up }: ScaleRun): number => up.filter(({ sound }) => sound === null).length;
  const best = runs.reduce<ScaleRun | null>(
    (kept, run) => (kept === null || gaps(run) < gaps(kept) ? run : kept),
    null,
  );
  if (best === null) return null;
  return (
    <p className="scale-line">
      <span className="label">
        {scale.name} in {names.key(scale.tonic)}
      </span>
      <span className="taps">
        {best.up.map(({ sound, pitch, tone }) =>
          sound === null ? (
            <span key={pitch} className="none">
              ({names.note(tone.name)})
            </span>
          ) : (
            <Tap key={pitch} sound={sound} meaning={tone} />
          ),
        )}
      </span>
      {/* Its room is kept, so that another drawing moves nothing. */}
      <span className="label legend" hidden={!blues}>
        • blue note
      </span>
    </p>
  );
};
