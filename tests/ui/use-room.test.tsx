import { cleanup, render } from '@testing-library/react';
import { useRef } from 'react';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import type { PanelId } from '../../src/ui/page/entries';
import { useRoom } from '../../src/ui/page/use-room';

const Whole = ({ room }: { readonly room: PanelId | null }) => {
  const whole = useRef<HTMLDivElement>(null);
  useRoom(whole, room);
  return (
    <div ref={whole}>
      <div className="form">
        <div className="chart" />
      </div>
      <div className="reading">
        <div className="fit" />
        <div className="map" />
      </div>
    </div>
  );
};

const WIDE = { width: 640, height: 480 };

const held = (): readonly string[] =>
  [...document.querySelectorAll<HTMLElement>('.chart, .fit, .map')].flatMap(({ className, style }) =>
    style.width === '' && style.height === '' ? [] : [`${className} ${style.width} × ${style.height}`],
  );

describe('making room for a panel', () => {
  beforeEach(() => {
    vi.useFakeTimers();
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockImplementation(
      () => new DOMRect(0, 0, WIDE.width, WIDE.height),
    );
  });

  afterEach(() => {
    cleanup();
    vi.useRealTimers();
    vi.restoreAllMocks();
  });

  it('is a task for the page, one for chart and cards, and one for the map', () => {
    const { container, rerender } = render(<Whole room={null} />);
    expect(held()).toEqual([]);
    rerender(<Whole room="song" />);
    expect(container.querySelector('[data-panel="song"]')).not.toBeNull();
    expect(held()).toEqual(['chart 640px × 480px', 'fit 640px × 480px', 'map 640px × 480px']);
    vi.advanceTimersToNextTimer();
    expect(held()).toEqual(['map 640px × 480px']);
    vi.advanceTimersToNextTimer();
    expect(held()).toEqual([]);
    expect(vi.getTimerCount()).toBe(0);
  });

  it('holds nothing at an old size where a panel is closed before the page has moved over', () => {
    const { container, rerender } = render(<Whole room={null} />);
    rerender(<Whole room="song" />);
    rerender(<Whole room={null} />);
    expect(container.querySelector('[data-panel]')).toBeNull();
    vi.runAllTimers();
    expect(held()).toEqual([]);
    rerender(<Whole room="harp" />);
    cleanup();
    expect(vi.getTimerCount()).toBe(0);
  });
});
