import { createListeners } from '../listeners/listeners';

/** The whole screen for the page, where the browser allows it (WHATWG Fullscreen). Where it does not, nothing happens. */
export interface FullScreen {
  enter(): void;
  leave(): void;
  /** Calls back when the player has left the full screen by the browser's own means. Returns the unsubscriber. */
  onLeft(listener: () => void): () => void;
}

interface Page {
  readonly fullscreenElement: Element | null;
  readonly visibilityState: DocumentVisibilityState;
  readonly documentElement: { requestFullscreen?(options?: FullscreenOptions): Promise<void> };
  exitFullscreen?(): Promise<void>;
  addEventListener(type: 'fullscreenchange', listener: () => void): void;
}

/** Fills the screen with the page, and gives back only what it took: the player may have done so before. */
export const createFullScreen = (page: Page): FullScreen => {
  const left = createListeners<void>();
  let ours = false;
  page.addEventListener('fullscreenchange', () => {
    if (page.fullscreenElement !== null || !ours) return;
    ours = false;
    // Going over to another tab or program ends the full screen too: that is no wish to leave the view.
    if (page.visibilityState === 'visible') left.tell();
  });
  return {
    enter: () => {
      if (page.fullscreenElement !== null) return;
      page.documentElement.requestFullscreen?.({ navigationUI: 'hide' }).then(
        () => {
          ours = true;
        },
        // Not allowed here: the view fills the window instead.
        () => undefined,
      );
    },
    leave: () => {
      if (!ours) return;
      ours = false;
      if (page.fullscreenElement !== null) void page.exitFullscreen?.().catch(() => undefined);
    },
    onLeft: left.add,
  };
};
