import type { Degree } from './chord';
import { REPLACED, readQuality } from './quality';

/**
 * The one way each quality is written here: a stem that says third, seventh and number, then fifth, alterations,
 * suspension, additions and omissions. `readQuality` of the name gives the degrees again.
 */

type Has = (...degrees: readonly Degree[]) => boolean;

const isDiminished = (has: Has): boolean => has('b3') && has('b5') && !has('5', '#5', 'b7', '6');

const numberOf = (has: Has): number => {
  const ninth = has('9', 'b9', '#9');
  if (has('13') && ninth) return 13;
  if (has('11') && ninth && !has('3', '2', '4', '#11')) return 11;
  return has('9') && !has('b9', '#9') ? 9 : 7;
};

const seventhStem = (has: Has): string => {
  const number = numberOf(has);
  if (has('bb7')) return `dim${number}`;
  if (!has('7')) return `${has('b3') ? 'm' : ''}${number}`;
  if (!has('b3')) return `maj${number}`;
  return `${isDiminished(has) && number < 13 ? 'dim' : 'm'}Maj${number}`;
};

const stemOf = (has: Has): string => {
  if (has('b7', '7', 'bb7')) return seventhStem(has);
  const minor = has('b3') ? 'm' : '';
  if (has('6')) return `${minor}6${has('9') && !has('b9', '#9') ? '9' : ''}`;
  if (isDiminished(has)) return 'dim';
  if (has('3') && has('#5') && !has('5', 'b5')) return 'aug';
  return minor === '' && !has('3', '2', '4') ? '5' : minor;
};

const fifthSigns = (stem: string, has: Has): string => {
  const signs = ['b5', '#5'].filter((each) => has(each) && !readQuality(stem)?.includes(each)).join('');
  return stem === '' && signs !== '' ? `(${signs})` : signs;
};

/** Alterations and additions above the seventh: after a number a sign is enough, a triad says `add`. */
const upperSigns = (
  stem: string,
  has: Has,
): { readonly text: string; readonly altered: readonly Degree[] } => {
  const numbered = /[79613]$/.test(stem);
  const altered = ['b9', '#9', '#11', 'b13'].filter(
    (each) => has(each) && numbered && !(each === 'b13' && has('5')),
  );
  const added = ['b6', 'b9', '#9', '#11', 'b13'].filter((each) => has(each) && !altered.includes(each));
  return { text: altered.join('') + added.map((each) => `add${each}`).join(''), altered };
};

/** The usual short name of a set of degrees: R 3 5 b7 b9 → `7b9`. Brackets keep a first sign off the root: `(b5)`. */
export const qualityName = (degrees: readonly Degree[]): string => {
  const has: Has = (...wanted) => wanted.some((each) => degrees.includes(each));
  const stem = stemOf(has);
  const { text, altered } = upperSigns(stem, has);
  const replaced = [...degrees.filter((each) => /5$/.test(each) && each !== '5'), ...altered].flatMap(
    (each) => REPLACED[each] ?? [],
  );
  const said = (readQuality(stem) ?? []).filter((each) => !replaced.includes(each));
  const says = (degree: Degree): boolean => said.includes(degree);
  const isSus = has('2', '4') && !has('3', 'b3');
  const sus = isSus ? `sus${has('2') ? '2' : ''}${has('4') ? '4' : ''}` : '';
  const both = stem.startsWith('dim') && has('bb7') && has('7') ? 'maj7' : '';
  const plain = ['4', '6', '9', '11', '13'].filter((each) => has(each) && !says(each));
  const adds = plain.filter((each) => each !== '4' || !isSus).map((each) => `add${each}`);
  const gone = [says('3') && !has('3') && !isSus ? 'no3' : '', says('5') && !has('5') ? 'no5' : ''];
  return [stem, both, fifthSigns(stem, has), text, sus, ...adds, ...gone].join('');
};
