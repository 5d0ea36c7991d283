import { describe, expect, it } from 'vitest';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createTabs } from '../../../../src/tabs/create-tabs';
import { openSession } from '../../../helpers/fake-session';
import { createFakeStorage } from '../../../helpers/fake-storage';

/** Channels as the standard has them: each hears what the others post, never what it posts itself (HTML, 9.5). */
const createChannels = () => {
  const all = new Set<EventTarget>();
  return () => {
    const channel = new EventTarget();
    all.add(channel);
    return Object.assign(channel, {
      postMessage: (data: unknown) => {
        for (const other of all)
          if (other !== channel) other.dispatchEvent(new MessageEvent('message', { data }));
      },
    }) as unknown as BroadcastChannel;
  };
};

let now = 0;
const clock = (): number => {
  now += 1;
  return now;
};

const openTab = (channel?: BroadcastChannel) => {
  const values = createKeptValues(() => createFakeStorage(), new EventTarget());
  return openSession(values, { tabs: createTabs(channel, clock) });
};

const notices = ({ state }: ReturnType<typeof openTab>) => state().notices.map(({ id }) => id);

describe('two tabs of the page', () => {
  it('have one band between them: it stops where it began first, says so, and can begin there again', async () => {
    const channel = createChannels();
    const [one, other] = [openTab(channel()), openTab(channel())];
    await one.commands.play();
    await other.commands.play();
    expect([one.band.status().kind, other.band.status().kind]).toEqual(['ready', 'playing']);
    expect([notices(one), notices(other)]).toEqual([['other-tab'], []]);

    await one.commands.play();
    expect([one.band.status().kind, other.band.status().kind]).toEqual(['playing', 'ready']);
    expect([notices(one), notices(other)]).toEqual([[], ['other-tab']]);
  });

  it('go on beside one another where the browser lets no tab know of the others', async () => {
    const [one, other] = [openTab(), openTab()];
    await one.commands.play();
    await other.commands.play();
    expect([one.band.status().kind, other.band.status().kind]).toEqual(['playing', 'playing']);
  });

  it('believe nothing that is not of this program’s making, and nothing that is over', async () => {
    const channel = createChannels();
    const [one, stranger] = [openTab(channel()), channel()];
    stranger.postMessage({ begun: 1 });
    await one.commands.play();
    for (const data of [null, 'stop', {}, { begun: 'now' }, { begun: -1 }]) stranger.postMessage(data);
    expect(one.band.status().kind).toBe('playing');
    one.session.dispose();
    stranger.postMessage({ begun: Number.MAX_VALUE });
    expect(notices(one)).toEqual([]);
  });
});
