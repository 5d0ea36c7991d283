import { createContext, useContext } from 'react';

/** Begins the tour of the page. */
export const TourContext = createContext<() => void>(() => {});

/** What begins the tour. */
export const useTour = (): (() => void) => useContext(TourContext);
