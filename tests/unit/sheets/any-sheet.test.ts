import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readChart } from '../../../src/core/chart-text/read-chart';
import { readAbc } from '../../../src/core/sheets/read-abc';
import { readMusicXml } from '../../../src/core/sheets/read-musicxml';
import type { XmlNode } from '../../../src/core/sheets/xml-node';
import { soakRuns } from '../../helpers/soak';

const SNIPPETS = [
  ...['X:1', 'T:x', 'K:G', 'M:3/4', 'M:none', 'L:0/0', 'L:1/8', 'Q:1/4=0', 'P:A2B', 'V:2', 's:"C"*|', 'w:la'],
  ...[
    '"G7"',
    '"^x"',
    '"',
    'A',
    'B2',
    'c/',
    'z4',
    'Z999',
    '(3',
    '{g',
    '[CEG]',
    '[K:',
    '[1',
    '|1',
    ':|',
    '|:',
    '::',
  ],
  ...[
    '|]',
    '||',
    '>',
    '<',
    '!trill!',
    '!',
    '%',
    '\\',
    '\n',
    ' ',
    '"N.C."',
    '"Am7b5/Eb"',
    '9999999999',
    '/////',
  ],
];

describe('any ABC text', () => {
  it('gives a sentence, or text that reads as a chart', () => {
    const text = fc.oneof(
      fc.array(fc.constantFrom(...SNIPPETS), { maxLength: 60 }).map((parts) => `X:1\nK:C\n${parts.join('')}`),
      fc.array(fc.constantFrom(...SNIPPETS), { maxLength: 60 }).map((parts) => parts.join('\n')),
      fc.string({ unit: 'binary', maxLength: 200 }),
    );
    fc.assert(
      fc.property(text, (source) => {
        const read = readAbc(source);
        if (typeof read === 'string') return read.length > 10;
        const { chart } = readChart(read.text, { tonic: 'C', mode: 'major', meter: '4/4', title: '' });
        return chart.bars.length > 0;
      }),
      { numRuns: soakRuns(100) },
    );
  });

  it('is read to its end where one line holds more than a call takes arguments', () => {
    const read = readAbc(`X:1\nK:C\n"C"${'c|'.repeat(70_000)}`);
    expect(read).toMatchObject({ name: 'Chart from a file', left: [] });
  });

  it('is refused in words where it is too long or holds no chords', () => {
    expect(readAbc('x'.repeat(600_000))).toContain('longer than any tune');
    expect(readAbc('X:1\nK:C\nCDEF|')).toContain('no chord symbols');
    expect(readAbc('hello')).toContain('K:');
  });
});

const NAMES = [
  'measure',
  'attributes',
  'harmony',
  'note',
  'backup',
  'barline',
  'direction',
  'sound',
  'duration',
];
const PARTS = [
  'root',
  'root-step',
  'kind',
  'degree',
  'offset',
  'repeat',
  'ending',
  'time',
  'beats',
  'divisions',
];

const anyNode: fc.Arbitrary<XmlNode> = fc.letrec<{ node: XmlNode }>((tie) => ({
  node: fc.record({
    name: fc.constantFrom(...NAMES, ...PARTS, 'part', 'key', 'fifths', 'rehearsal', 'direction-type'),
    attributes: fc.dictionary(
      fc.constantFrom('times', 'number', 'type', 'tempo', 'direction', 'segno'),
      fc.string(),
    ),
    children: fc.oneof({ maxDepth: 4 }, fc.constant([]), fc.array(tie('node'), { maxLength: 3 })),
    text: fc.oneof(fc.constantFrom('', 'C', '4', '0', '-3', 'dominant', 'none', '1e9'), fc.string()),
  }),
})).node;

describe('any tree of elements', () => {
  it('gives a sentence, or text that reads as a chart', () => {
    const harmony = { name: 'harmony', attributes: {}, children: [], text: '' };
    fc.assert(
      fc.property(fc.array(anyNode, { maxLength: 6 }), (children) => {
        const measure = { name: 'measure', attributes: {}, children: [...children, harmony], text: '' };
        const part = { name: 'part', attributes: {}, children: [measure, ...children], text: '' };
        const read = readMusicXml({ name: 'score-partwise', attributes: {}, children: [part], text: '' });
        if (typeof read === 'string') return true;
        return (
          readChart(read.text, { tonic: 'C', mode: 'major', meter: '4/4', title: '' }).chart.bars.length > 0
        );
      }),
      { numRuns: soakRuns(200) },
    );
  });
});
