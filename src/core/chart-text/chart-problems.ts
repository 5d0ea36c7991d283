/**
 * What a chart reader tells the player: where something stands, what is wrong with it, what happens to it now and
 * what to do about it. `unread` text sounds as the chord before it; `adjusted` text sounds nearly as written.
 */
export interface Problem {
  readonly kind: 'unread' | 'adjusted';
  /** From 1. */
  readonly line: number;
  /** From 1, counted in UTF-16 units as text fields count them. */
  readonly column: number;
  /** The text in question, as typed. */
  readonly text: string;
  readonly what: string;
  readonly advice: string;
}

/** Where a piece of text stands. */
export interface TextSpan {
  readonly line: number;
  readonly column: number;
  readonly text: string;
}

const problem = (
  kind: Problem['kind'],
  { line, column, text }: TextSpan,
  what: string,
  advice: string,
): Problem => ({ kind, line, column, text, what, advice });

/** A word that names no chord. `meant` is a spelling that would be one, if there is a likely one. */
export const noChord = (span: TextSpan, meant: string | null): Problem =>
  problem(
    'unread',
    span,
    `"${span.text}" is not a chord; the chord before it goes on.`,
    meant === null
      ? 'Write a chord such as Bb7, F#m7b5 or C7/E, or a numeral such as IV7.'
      : `Did you mean ${meant}?`,
  );

/** A chord of which only the beginning is known. */
export const chordTrimmed = (span: TextSpan, understood: string, rest: string): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" sounds as ${understood}, without "${rest}".`,
    'Leave it so, or write the chord with fewer additions.',
  );

/** A repeat sign that shares its bar. */
export const signNotAlone = (span: TextSpan): Problem =>
  problem(
    'unread',
    span,
    `"${span.text}" repeats a whole bar, but this bar holds something else too; the chord before it goes on.`,
    'Write it alone between bar lines, or use / for a beat of the same chord.',
  );

/** A repeat sign or beat before any chord. */
export const nothingBefore = (span: TextSpan, tonic: string): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" goes on with the chord before it, but there is none; ${tonic} sounds.`,
    'Begin with a chord.',
  );

/** More in a bar than it can share out. */
export const barTooFull = (span: TextSpan, count: number, most: number): Problem =>
  problem(
    'unread',
    span,
    `This bar holds ${count} chords and beats, more than the ${most} that fit; the chord before it goes on.`,
    'Part it with | into several bars.',
  );

/** Chords on a line of their own, which make one bar. */
export const lineUnparted = (span: TextSpan, count: number): Problem =>
  problem(
    'adjusted',
    span,
    `The ${count} chords of this line share one bar, as no | parts them.`,
    'If each is meant to last a bar, write one chord a bar, such as C7 | F7 | C7 | C7.',
  );

/** More text than a chart is read of. */
export const textTooLong = (count: number, most: number): Problem =>
  problem(
    'unread',
    { line: 1, column: 1, text: '' },
    `This text has ${count.toLocaleString('en')} characters, more than the ${most.toLocaleString('en')} of a chart; nothing of it is played.`,
    'It is kept as it is. Make it shorter, or keep parts of it as charts of their own.',
  );

/** Several chords to a beat: probably a forgotten bar line. */
export const barCrowded = (span: TextSpan, count: number, beats: number): Problem =>
  problem(
    'adjusted',
    span,
    `${count} chords and beats share a bar of ${beats} beats equally.`,
    'If that is not what you mean, part the bars with |.',
  );

/** Slashes that do not come out even. */
export const beatsUneven = (span: TextSpan, count: number, beats: number): Problem =>
  problem(
    'adjusted',
    span,
    `${count} beats are written in a bar of ${beats}; the first ones last longer.`,
    `Write ${beats} chords and slashes in all.`,
  );

/** A `|:` that is never closed. */
export const repeatOpen = (span: TextSpan): Problem =>
  problem('adjusted', span, 'This repeat has no end, so it is played once.', 'Write :| where it ends.');

/** A `:|` with no bars to repeat. */
export const repeatEmpty = (span: TextSpan): Problem =>
  problem('adjusted', span, 'This repeat holds no bars.', 'Write bars before it, or take it out.');

/** A word of an order that is no section's name. */
export const noSection = (span: TextSpan): Problem =>
  problem(
    'adjusted',
    span,
    `No section is called "${span.text}", so the order goes on without it.`,
    'Name sections at the beginning of a line, such as [A] or Verse:, and write the order with these names.',
  );

/** A section that the order leaves out. */
export const sectionUnplayed = (span: TextSpan, name: string): Problem =>
  problem(
    'adjusted',
    span,
    name === ''
      ? 'The bars before the first section have no name, so the order does not come to them.'
      : `The order does not name section ${name}, so it is kept but not played.`,
    name === '' ? 'Give them a name, such as [Intro].' : `Write ${name} into the order, or leave it.`,
  );

/** D.C. and the like in a text with an order. */
export const roadBesideOrder = (span: TextSpan): Problem =>
  problem(
    'adjusted',
    span,
    `The order says what is played when, so "${span.text}" is not followed.`,
    'Leave it as a note to yourself, or take the order out.',
  );

/** D.S. without a sign to go to. */
export const noSegno = (span: TextSpan): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" goes to a sign that is not there; it goes to the beginning.`,
    'Write Segno (or 𝄋) before the bar that is meant.',
  );

/** A way to a coda that is not there. */
export const noCoda = (span: TextSpan): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" goes to a coda that is not there; what follows is played.`,
    'Write Coda (or 𝄌) before the bar that is meant.',
  );

/** A line such as `Key:` whose value says nothing that can be used. */
export const headerUnread = (span: TextSpan, what: string, example: string): Problem =>
  problem('unread', span, `"${span.text}" says no ${what}.`, `Write ${example}.`);

/** A pick-up that holds nothing, or a bar and more. */
export const pickUpLength = (span: TextSpan, most: number): Problem =>
  problem(
    'unread',
    span,
    `"${span.text}" is no pick-up: one has 1 to ${most} beats in this meter.`,
    'Write a chord or / for each beat before the first bar, such as Pick-up: D7 /.',
  );

/** A line that says again what was said. */
export const headerAgain = (span: TextSpan): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" says what a line before it has said, so it is left out.`,
    'Keep one of the two.',
  );

/** A chord whose small letter was taken for a minor one. */
export const smallLetter = (span: TextSpan, understood: string, large: string): Problem =>
  problem(
    'adjusted',
    span,
    `"${span.text}" is read as ${understood}: a small letter is a minor chord.`,
    `Write ${understood}, or ${large} if that is meant.`,
  );

/** Bars past the longest chart. */
export const tooManyBars = (span: TextSpan, most: number): Problem =>
  problem(
    'unread',
    span,
    `A chart holds ${most} bars; from here on the text is kept but not played.`,
    'Make the chart shorter, or keep the rest as a second chart.',
  );

/** The text has no bar at all, so the tonic sounds for one. */
export const noBars = (tonic: string): Problem =>
  problem(
    'adjusted',
    { line: 1, column: 1, text: '' },
    `There are no bars yet, so one bar of ${tonic} sounds.`,
    'Write chords with | between the bars, such as C7 | F7 | C7 | C7.',
  );
