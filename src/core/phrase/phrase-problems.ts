import type { Problem, TextSpan } from '../chart-text/chart-problems';

const problem = (kind: Problem['kind'], span: TextSpan, what: string, advice: string): Problem => ({
  kind,
  line: span.line,
  column: span.column,
  text: span.text,
  what,
  advice,
});

const MANNER_ADVICE =
  "Write -4~-4'~-4 for a bend and back, -1..-4 for a slide, -4*-5 for a shake, -4> for an accent.";

/** A word that is no note: it stays silent. */
export const noNote = (span: TextSpan): Problem =>
  problem(
    'unread',
    span,
    `"${span.text}" is not a note; it stays silent.`,
    "Write a hole with its breath, such as 4, -4, -3'' or 4D, or r for a rest.",
  );

/** What stands after a colon is no length: the one before goes on. */
export const noLength = (span: TextSpan, length: string): Problem =>
  problem(
    'adjusted',
    span,
    `"${length}" is not a note length; the length before it goes on.`,
    'Write w, h, q, e or s after the colon, with . for dotted or t for triplet, such as :q or :e.',
  );

/** Holes that are blown and drawn at once. */
export const mixedBreath = (span: TextSpan): Problem =>
  problem(
    'unread',
    span,
    `"${span.text}" blows and draws at once; it stays silent.`,
    'Put only holes of one breath in brackets.',
  );

/** A bar line where the bar is not full. */
export const barNotFull = (span: TextSpan, beats: number, of: number): Problem =>
  problem(
    'adjusted',
    span,
    `Before this bar line there are ${beats} beats, not ${of}.`,
    beats < of ? 'Add a note or a rest such as r:q.' : 'Make a note shorter, or move the bar line.',
  );

/** Signs for how a note is played that do not go together. */
export const noManner = (span: TextSpan, why: string): Problem =>
  problem('adjusted', span, `"${span.text}": ${why}; the note is held.`, MANNER_ADVICE);

/** More than a phrase holds. */
export const phraseTooLong = (span: TextSpan, bars: number): Problem =>
  problem(
    'unread',
    span,
    `A phrase holds ${bars} bars; from here on the text is kept but not played.`,
    'Make two phrases of it.',
  );
