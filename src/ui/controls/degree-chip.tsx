import type { Degree } from '../../core/theory/chord';
import { degreeText } from '../../core/theory/note-names';
import { functionOf } from './degree-function';

/** A degree on the colour of its function; the text says it, the colour only helps. */
export const DegreeChip = ({ degree }: { readonly degree: Degree }) => (
  <span className="degree" data-function={functionOf(degree)}>
    {degreeText(degree)}
  </span>
);
