/** What tells the other tabs of the page, and hears of them; absent in old browsers. */
export type Teller = Pick<BroadcastChannel, 'postMessage' | 'addEventListener' | 'removeEventListener'>;
