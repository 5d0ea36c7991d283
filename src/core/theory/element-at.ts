/** A list of any kind, typed arrays and `Float32Array`s of samples among them. */
interface Indexed<T> {
  readonly length: number;
  readonly [index: number]: T;
}

/**
 * The element of a list where the caller knows that there is one, as behind a search or a count. Throws RangeError
 * where there is none, so that a mistake shows here and not as `undefined` in what is computed from it.
 */
export const elementAt = <T>(list: Indexed<T>, index: number): T => {
  const element = list[index];
  if (element === undefined) throw new RangeError(`no element ${index} in a list of ${list.length}`);
  return element;
};
