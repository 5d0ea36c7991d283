import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { createSession } from './app/session';
import { createBand } from './audio/create-band';
import { createKeptValues } from './storage/kept-values';
import { App } from './ui/app';

const page = document.getElementById('page');
if (page === null) throw new Error('The page has no element "page" to draw into');

const session = createSession({
  band: createBand(),
  kept: createKeptValues(() => window.localStorage, window),
  newSeed: () => Math.floor(Math.random() * 1_000_000),
});

createRoot(page).render(
  <StrictMode>
    <App session={session} />
  </StrictMode>,
);
