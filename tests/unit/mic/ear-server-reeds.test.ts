import { describe, expect, it } from 'vitest';
import { elementAt } from '../../../src/core/theory/element-at';
import { asSeconds } from '../../../src/core/theory/units';
import { createEarServer } from '../../../src/mic/ear-server';
import type { LearntReeds } from '../../../src/mic/microphone';
import { harpSamples } from '../../helpers/harp-recording';
import { C_HARP } from '../../helpers/heard-note';

const RATE = 48_000;
const BLOCK = 256;

/** An ear's server, the sound it is given from a time of the audio clock on (seconds), and what it had kept. */
const serving = (from: number) => {
  const kept: LearntReeds[] = [];
  const server = createEarServer(
    RATE,
    () => {},
    (learnt) => kept.push(learnt),
  );
  let frame = Math.round(from * RATE);
  const give = (samples: Float32Array): void => {
    for (let at = 0; at + BLOCK <= samples.length; at += BLOCK) {
      server.take({ at: frame, heard: samples.subarray(at, at + BLOCK), sent: new Float32Array(BLOCK) });
      frame += BLOCK;
    }
  };
  return { server, kept, give };
};

const idsOf = ({ known }: LearntReeds): readonly string[] => known?.reeds.map(({ id }) => id) ?? [];

describe('an ear that is taught how a harp sounds', () => {
  // G4, which is 2 draw and 3 blow of a C harp: nobody can tell which by its pitch.
  const g4 = harpSamples([{ midi: 67, from: 0.2, to: 0.9 }], 1);
  const sound = elementAt(
    C_HARP.sounds.filter(({ hole, breath, bend }) => hole === 2 && breath === 'draw' && bend === 0),
    0,
  );
  const reeds = { key: 'this harp', known: null };
  const teachIt = () => {
    const { server, kept, give } = serving(5);
    server.choose({ harp: C_HARP, reeds });
    give(g4);
    server.teach(sound, asSeconds(5.2), asSeconds(5.9));
    return { server, kept, give };
  };

  it('tells what it learnt at once, under the name it was given, as the sound that it is said to be', () => {
    const { kept } = teachIt();
    expect(kept.map(({ key }) => key)).toEqual(['this harp']);
    expect(idsOf(elementAt(kept, 0))).toContain('2D');
    const reed = kept[0]?.known?.reeds.find(({ id }) => id === '2D');
    expect(reed?.windows[0]).toBeGreaterThan(5);
  });

  it('goes on from it where it listens anew for the same harp, and not for another', () => {
    const { server, kept, give } = teachIt();
    server.choose({ harp: C_HARP, targets: ['3B'], reeds });
    give(g4);
    server.teach({ ...sound, hole: 3, breath: 'blow' }, asSeconds(6.2), asSeconds(6.9));
    expect(idsOf(elementAt(kept, 1))).toEqual(expect.arrayContaining(['2D', '3B']));
    server.choose({ harp: C_HARP, reeds: { key: 'another', known: null } });
    give(g4);
    server.teach({ ...sound, hole: 3, breath: 'blow' }, asSeconds(7.2), asSeconds(7.9));
    expect(kept.at(-1)?.key).toBe('another');
    expect(idsOf(elementAt(kept, kept.length - 1))).not.toContain('2D');
  });

  it('begins with what was kept, and tells nothing that was told before, nor where it has no name', () => {
    const { kept } = teachIt();
    const again = serving(0);
    again.server.choose({ harp: C_HARP, reeds: elementAt(kept, 0) });
    again.give(new Float32Array(RATE));
    // Nothing was heard between these seconds.
    again.server.teach(sound, asSeconds(0.1), asSeconds(0.9));
    expect(again.kept).toEqual([]);
    const nameless = serving(0);
    nameless.server.choose({ harp: C_HARP });
    nameless.give(g4);
    nameless.server.teach(sound, asSeconds(0.2), asSeconds(0.9));
    expect(nameless.kept).toEqual([]);
  });
});
