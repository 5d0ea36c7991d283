import type { SelfMark } from '../../core/today/grade';

/** A mark as it is said, and as a sign that needs no colour. */
export const SELF_MARK_SIGNS: Readonly<Record<SelfMark, { readonly sign: string; readonly text: string }>> = {
  clean: { sign: '●', text: 'Clean' },
  nearly: { sign: '◐', text: 'Nearly' },
  again: { sign: '○', text: 'Not yet' },
};
