import { createContext } from 'react';

/** The panels found under one entry of the head, of which this is one. */
export interface PanelPages {
  readonly pages: readonly { readonly id: string; readonly text: string }[];
  readonly open: string;
  readonly onOpen: (id: string) => void;
}

/** Tells a panel its neighbours; without it a panel stands alone. */
export const PanelPagesContext = createContext<PanelPages | null>(null);

/** Tells a panel whether the page has made room for it. */
export const PanelRoomContext = createContext(true);
