/** Lets the page do what it has waiting before long work goes on. */
export const pageTurn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve));
