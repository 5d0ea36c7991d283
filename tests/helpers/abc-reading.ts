import abcjs from 'abcjs';

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const listIn = (value: unknown, key: string): readonly unknown[] => {
  const found = isRecord(value) ? value[key] : undefined;
  return Array.isArray(found) ? found : [];
};

/** What an ABC tune has in its voices, as the kept parser abcjs reads it. */
const elementsOf = (source: string): readonly unknown[] =>
  abcjs
    .parseOnly(source)
    .flatMap((tune) => listIn(tune, 'lines'))
    .flatMap((line) => listIn(line, 'staff'))
    .flatMap((staff) => listIn(staff, 'voices'))
    .flatMap((voice) => (Array.isArray(voice) ? voice : []));

/** Notes as steps of the scale above middle C, and lengths in whole notes; signatures and signs left aside. */
export const abcSteps = (source: string): readonly (readonly [step: number, length: number])[] =>
  elementsOf(source).flatMap((element) =>
    listIn(element, 'pitches').flatMap((pitch) =>
      isRecord(pitch) && isRecord(element) ? [[Number(pitch.pitch), Number(element.duration)] as const] : [],
    ),
  );

/** The chord symbols of an ABC tune as written, in order, as the kept parser abcjs reads them; glyphs back in ASCII. */
export const abcChords = (source: string): readonly string[] =>
  elementsOf(source)
    .flatMap((element) => listIn(element, 'chord'))
    .flatMap((chord) =>
      isRecord(chord) && chord.position === 'default' && typeof chord.name === 'string' ? [chord.name] : [],
    )
    .map((name) => name.replace(/♭/g, 'b').replace(/♯/g, '#'));
