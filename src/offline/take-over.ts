/** What a page says to a waiting version that the player wants to use. */
export const TAKE_OVER = 'take over';
