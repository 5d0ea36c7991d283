import { describe, expect, it } from 'vitest';
import { openDraft } from '../../../../src/core/song/chart-drafts';
import { asPitchClass } from '../../../../src/core/theory/units';
import { createKeptValues } from '../../../../src/storage/kept-values';
import { createSession } from '../../../helpers/create-session';
import { createFakeBand } from '../../../helpers/fake-band';
import { createFakeOwnSounds } from '../../../helpers/fake-own-sounds';
import { createFakeStorage, type FakeStorage } from '../../../helpers/fake-storage';
import { createFakeTakeAway } from '../../../helpers/fake-take-away';

const open = (storage: FakeStorage = createFakeStorage()) => {
  let seed = 100;
  const band = createFakeBand();
  const elsewhere = new Map<string, (value: unknown) => void>();
  const { store, commands } = createSession({
    band,
    kept: {
      ...createKeptValues(() => storage, new EventTarget()),
      onWrittenElsewhere: (name, listener) => {
        elsewhere.set(name, listener);
        return () => elsewhere.delete(name);
      },
    },
    later: () => () => {},
    newSeed: () => {
      seed += 1;
      return seed;
    },
    takeAway: createFakeTakeAway(),
    ownSounds: createFakeOwnSounds(),
  });
  const state = store.getState;
  return {
    band,
    storage,
    state,
    commands,
    /** Another tab writes a value. */
    writeElsewhere: (name: string, value: unknown): void => {
      storage.items.set(`combshed.${name}`, JSON.stringify(value));
      elsewhere.get(name)?.(value);
    },
    draft: () => openDraft(state())?.present,
    symbols: () =>
      state().tune.chart.bars.map(({ chords }) => chords.map(({ chord }) => chord.symbol).join(' ')),
  };
};

const TEXT = '| G6 | E7 | Am7 | D7 |';

/** A page with one saved chart of four bars in G. */
const withChart = (storage?: FakeStorage) => {
  const page = open(storage);
  page.commands.newChart();
  page.commands.editChart({ name: 'Thursday', text: TEXT });
  page.commands.saveChart();
  return page;
};

describe('a chart of one’s own', () => {
  it('starts empty in the song’s key', () => {
    const { commands, draft } = open();
    commands.chooseSongKey(asPitchClass(10));
    commands.newChart();
    expect(draft()).toMatchObject({ name: 'Chart', text: '', tonic: 'Bb', mode: 'major', meter: '4/4' });
  });

  it('is played once it is saved, not before', () => {
    const { commands, symbols, state } = open();
    commands.newChart();
    commands.editChart({ text: TEXT });
    expect(symbols()).toHaveLength(12);
    commands.saveChart();
    expect(symbols()).toEqual(['G6', 'E7', 'Am7', 'D7']);
    expect(state().tune.fit.bars).toHaveLength(4);
    expect(state().now.tune).toBe(state().tune);
  });

  it('follows the song’s key', () => {
    const { commands, symbols } = withChart();
    commands.chooseSongKey(asPitchClass(5));
    expect(symbols()).toEqual(['F6', 'D7', 'Gm7', 'C7']);
  });

  it('is handed to the band while it plays, on saving and on saving again', async () => {
    const { band, commands } = open();
    await commands.play();
    commands.newChart();
    commands.editChart({ text: TEXT });
    commands.saveChart();
    expect(band.programs.at(-1)?.chart.bars).toHaveLength(4);
    commands.editChart({ text: 'G7 | C7' });
    expect(band.programs.at(-1)?.chart.bars).toHaveLength(4);
    commands.saveChart();
    expect(band.programs.at(-1)?.chart.bars).toHaveLength(2);
  });

  it('takes a repeated range away that it no longer has, and keeps one it has', async () => {
    const { commands, state } = withChart();
    commands.repeat({ from: 2, to: 3 });
    commands.editChart({ text: `${TEXT}\n${TEXT}` });
    commands.saveChart();
    expect(state().settings.plan.repeat).toEqual({ from: 2, to: 3 });
    commands.editChart({ text: 'G7 | C7' });
    commands.saveChart();
    expect(state().settings.plan.repeat).toBeNull();
  });

  it('moves the cursor back into a shorter chart', () => {
    const { commands, state } = withChart();
    commands.moveTo(3);
    commands.editChart({ text: 'G7 | C7' });
    commands.saveChart();
    expect([state().cursor, state().now.bar]).toEqual([1, 1]);
  });
});

describe('copies', () => {
  it('of a built-in form are in the song’s key', () => {
    const { commands, draft } = open();
    commands.chooseForm('minor-a');
    commands.chooseSongKey(asPitchClass(0));
    commands.duplicateForm();
    expect(draft()).toMatchObject({ name: 'Minor twelve bars', mode: 'minor', tonic: 'C' });
    expect(draft()?.text.split('\n')[2]).toBe('| G7 | Fm7 | Cm7 | Cm7 |');
  });

  it('of an own chart are another chart of another name', () => {
    const { commands, draft, state } = withChart();
    commands.duplicateForm();
    expect(draft()).toMatchObject({ name: 'Thursday 2', text: TEXT });
    commands.saveChart();
    expect(state().ownCharts.map(({ name }) => name)).toEqual(['Thursday', 'Thursday 2']);
    expect(new Set(state().ownCharts.map(({ id }) => id)).size).toBe(2);
  });
});

describe('rewriting', () => {
  it('transposes text and key together', () => {
    const { commands, draft } = withChart();
    commands.transposeChart(-2);
    expect(draft()).toMatchObject({ tonic: 'F', text: '| F6 | D7 | Gm7 | C7 |' });
  });

  it('twelve times up is where it began', () => {
    const { commands, draft } = withChart();
    for (let i = 0; i < 12; i += 1) commands.transposeChart(1);
    expect(draft()).toMatchObject({ tonic: 'G', text: TEXT });
  });

  it('respells in the other name of the key, and back', () => {
    const { commands, draft } = withChart();
    commands.transposeChart(-1);
    expect(draft()).toMatchObject({ tonic: 'F#', text: '| F#6 | D#7 | G#m7 | C#7 |' });
    commands.respellChart();
    expect(draft()).toMatchObject({ tonic: 'Gb', text: '| Gb6 | Eb7 | Abm7 | Db7 |' });
    commands.respellChart();
    expect(draft()?.tonic).toBe('F#');
  });

  it('leaves a key with one spelling alone', () => {
    const { commands, draft } = withChart();
    commands.respellChart();
    expect(draft()).toMatchObject({ tonic: 'G', text: TEXT });
  });

  it('is undone and done again, typing word by word', () => {
    const { commands, draft } = withChart();
    for (const text of ['A', 'A7', 'A7 ', 'A7 |', 'A7 | ', 'A7 | D', 'A7 | D7']) commands.editChart({ text });
    commands.transposeChart(2);
    const texts: (string | undefined)[] = [draft()?.text];
    for (let i = 0; i < 4; i += 1) {
      commands.undoChart();
      texts.push(draft()?.text);
    }
    expect(texts).toEqual(['B7 | E7', 'A7 | D7', 'A7 | ', 'A', TEXT]);
    for (let i = 0; i < 4; i += 1) commands.redoChart();
    expect(draft()).toMatchObject({ tonic: 'A', text: 'B7 | E7' });
  });

  it('can still be undone after saving', () => {
    const { commands, draft, symbols } = withChart();
    commands.editChart({ text: 'G7' });
    commands.saveChart();
    commands.undoChart();
    expect(draft()?.text).toBe(TEXT);
    expect(symbols()).toEqual(['G7']);
  });
});

describe('deleting', () => {
  it('takes the chart away and brings it back, with what was not saved, and plays it again', () => {
    const { commands, draft, state, symbols } = withChart();
    commands.editChart({ text: 'G7 | C7 | G7' });
    commands.deleteChart();
    expect(state().ownCharts).toEqual([]);
    expect(draft()).toBeUndefined();
    expect(symbols()).toHaveLength(12);
    commands.restoreChart();
    expect(state().ownCharts.map(({ text }) => text)).toEqual([TEXT]);
    expect(draft()?.text).toBe('G7 | C7 | G7');
    expect(symbols()).toHaveLength(4);
  });

  it('brings back a chart that was never saved as one that is not saved', () => {
    const { commands, draft, state } = open();
    commands.newChart();
    commands.editChart({ text: 'C7' });
    commands.deleteChart();
    commands.restoreChart();
    expect(draft()?.text).toBe('C7');
    expect(state().ownCharts).toEqual([]);
  });
});

describe('what is kept', () => {
  it('survives a reload: saved charts, the choice of one, and what was typed and not saved', () => {
    const storage = createFakeStorage();
    const first = withChart(storage);
    first.commands.editChart({ text: 'G7 | C7' });
    first.commands.newChart();
    first.commands.editChart({ name: 'Friday', text: 'oh no' });
    const second = open(storage);
    expect(second.symbols()).toEqual(['G6', 'E7', 'Am7', 'D7']);
    const [saved] = second.state().ownCharts;
    second.commands.openChart(saved?.id ?? '');
    expect(second.draft()?.text).toBe('G7 | C7');
    second.commands.openChart('chart-102');
    expect(second.draft()).toMatchObject({ name: 'Friday', text: 'oh no' });
  });

  it('leaves nothing behind of a new chart that stayed empty', () => {
    const { commands, state } = withChart();
    commands.newChart();
    commands.newChart();
    expect(
      Object.values(state().chartDrafts.drafts).filter(({ present }) => present.text === ''),
    ).toHaveLength(1);
  });

  it('takes over what another tab saved, but never over what is being written here', () => {
    const { commands, draft, state, symbols, writeElsewhere } = withChart();
    const [saved] = state().ownCharts;
    const fromElsewhere = (text: string): void => writeElsewhere('charts', [{ ...saved, text }]);
    fromElsewhere('A7 | D7');
    expect(state().ownCharts[0]?.text).toBe('A7 | D7');
    expect(draft()?.text).toBe('A7 | D7');
    expect(symbols()).toEqual(['A7', 'D7']);
    commands.editChart({ text: 'A7 | D7 | E7' });
    fromElsewhere('A7');
    expect(draft()?.text).toBe('A7 | D7 | E7');
  });

  it('reads damaged charts without losing the others, and says so', () => {
    const good = { id: 'chart-1', name: 'Good', text: 'C7', tonic: 'C', mode: 'major', meter: '4/4' };
    const storage = createFakeStorage({ 'combshed.charts': JSON.stringify([{ name: 'x' }, good]) });
    const { state } = open(storage);
    expect(state().ownCharts).toEqual([good]);
    expect(
      state()
        .notices.map(({ text }) => text)
        .join(),
    ).toMatch(/holds no text.*A copy/);
  });

  it('falls back to the standard form where the chosen chart is gone', () => {
    const settings = { version: 1, formId: 'chart-9', plan: {} };
    const { symbols, state } = open(createFakeStorage({ 'combshed.settings': JSON.stringify(settings) }));
    expect(symbols()).toHaveLength(12);
    expect(state().settings.formId).toBe('chart-9');
  });
});

describe('a chart that is deleted', () => {
  it('leaves the form that stood before it, or a chart before that which is still there', () => {
    const { commands, state } = open();
    commands.chooseForm('eight-circle');
    commands.newChart();
    commands.editChart({ text: '| Dm7 | G7 |' });
    commands.saveChart();
    const first = state().settings.formId;
    commands.newChart();
    commands.editChart({ text: '| C | F |' });
    commands.saveChart();
    commands.deleteChart();
    expect(state().settings.formId).toBe(first);
    expect(state().tune.chart.bars).toHaveLength(2);
    commands.openChart(first);
    commands.deleteChart();
    expect(state().settings.formId).toBe('eight-circle');
    expect(state().ownCharts).toEqual([]);
  });
});
