import type { Degree } from '../../core/theory/chord';
import { prettyName } from '../../core/theory/pitch';
import { functionOf } from './degree-function';

/** A degree on the colour of its function; the text says it, the colour only helps. */
export const DegreeChip = ({ degree }: { readonly degree: Degree }) => (
  <span className="degree" data-function={functionOf(degree)}>
    {prettyName(degree)}
  </span>
);
