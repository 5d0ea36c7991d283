/** Hands what was made on to other programs, by the sheet of the platform (Web Share API, W3C), where it has one. */

import { messageOf } from '../core/theory/thrown';

/** What became of it. */
export type Sharing =
  | { readonly kind: 'shared' }
  /** The player closed the sheet again. */
  | { readonly kind: 'left' }
  | { readonly kind: 'refused'; readonly detail: string };

/** As much of the browser as sharing uses; older ones and those of most desktops have none of it. */
export type ShareGround = Partial<Pick<Navigator, 'share' | 'canShare'>>;

/** The files that were handed over last, ready to be handed on; and links. */
export interface ShareSheet {
  /** Begins anew: what was made before is not meant any more. */
  begin(): void;
  note(blob: Blob, name: string): void;
  /** Whether the platform would take all that was noted. */
  takes(): boolean;
  /** Opens the sheet: to be called from a press alone, as browsers want it. Never rejects. */
  offer(): Promise<Sharing>;
  /** Opens the sheet with a link in it: from a press as well. Never rejects. */
  offerLink(url: string): Promise<Sharing>;
}

const shareBy = async (ground: ShareGround, data: ShareData): Promise<Sharing> => {
  try {
    if (ground.share === undefined) throw new Error('it has no way to');
    await ground.share(data);
    return { kind: 'shared' };
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return { kind: 'left' };
    return { kind: 'refused', detail: messageOf(error) };
  }
};

/** A sheet for files. @param ground usually `navigator`. */
export const createShareSheet = (ground: ShareGround): ShareSheet => {
  let files: File[] = [];
  return {
    begin: () => {
      files = [];
    },
    note: (blob, name) => {
      files.push(new File([blob], name, { type: blob.type }));
    },
    takes: () => files.length > 0 && ground.share !== undefined && ground.canShare?.({ files }) === true,
    offer: () => shareBy(ground, { files }),
    offerLink: (url) => shareBy(ground, { url }),
  };
};
