import abcjs from 'abcjs';

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null;

const listIn = (value: unknown, key: string): readonly unknown[] => {
  const found = isRecord(value) ? value[key] : undefined;
  return Array.isArray(found) ? found : [];
};

/** The chord symbols of an ABC tune as written, in order, as the kept parser abcjs reads them; glyphs back in ASCII. */
export const abcChords = (source: string): readonly string[] =>
  abcjs
    .parseOnly(source)
    .flatMap((tune) => listIn(tune, 'lines'))
    .flatMap((line) => listIn(line, 'staff'))
    .flatMap((staff) => listIn(staff, 'voices'))
    .flatMap((voice) => (Array.isArray(voice) ? voice : []))
    .flatMap((element) => listIn(element, 'chord'))
    .flatMap((chord) =>
      isRecord(chord) && chord.position === 'default' && typeof chord.name === 'string' ? [chord.name] : [],
    )
    .map((name) => name.replace(/♭/g, 'b').replace(/♯/g, '#'));
