import { packText, UnreadableText, unpackText } from './packed-text';

/** Most bytes of text in a link: a long chart with words fits many times over. */
export const MOST_IN_LINK = 100_000;

/** What is in the fragment before the packed text. */
const MARK = '#song=';

/** A text out of a link, or a sentence on why it cannot be read. */
export type LinkedText = { readonly text: string } | { readonly trouble: string };

/** The address of the page, as far as songs travel in it. */
export interface PageLink {
  /** An address that opens the page with this text; a sentence where it is too long for one. */
  write(text: string): Promise<LinkedText>;
  /** The text the page was opened with; `null` where there is none. It is taken out of the address. */
  take(): Promise<LinkedText | null>;
}

/** What of the browser is needed. */
export interface LinkGround {
  readonly location: Pick<Location, 'hash' | 'origin' | 'pathname'>;
  /** Shows another address without loading anything. */
  readonly show: (address: string) => void;
}

const told = async (work: () => Promise<string>): Promise<LinkedText> => {
  try {
    return { text: await work() };
  } catch (error) {
    if (error instanceof UnreadableText) return { trouble: error.message };
    return {
      trouble:
        'This browser cannot pack links. Pass it on as a file: save the exercise under Practise, Phrases, or everything under Take away.',
    };
  }
};

/** Songs in the page's own address. */
export const createPageLink = ({ location, show }: LinkGround): PageLink => {
  const address = `${location.origin}${location.pathname}`;
  return {
    write: (text) => told(async () => `${address}${MARK}${await packText(text, MOST_IN_LINK)}`),
    take: async () => {
      const { hash } = location;
      if (!hash.startsWith(MARK)) return null;
      show(address);
      return told(() => unpackText(hash.slice(MARK.length), MOST_IN_LINK));
    },
  };
};
