import { useState } from 'react';
import type { Licence } from './licence-texts';

type Fetched = 'not asked' | 'fetching' | 'failed' | readonly Licence[];

const LicenceText = ({ packages, licence, text }: Licence) => (
  <details>
    <summary>
      {packages.join(', ')}: {licence}
    </summary>
    {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a long text is scrolled with the arrow keys */}
    <pre className="licence-text" tabIndex={0}>
      {text}
    </pre>
  </details>
);

/** The licences of the fonts and libraries the program is built with, fetched when they are wanted. */
export const Licences = () => {
  const [fetched, setFetched] = useState<Fetched>('not asked');
  const fetchThem = (): void => {
    setFetched('fetching');
    import('./licence-texts').then(
      ({ LICENCES }) => setFetched(LICENCES),
      () => setFetched('failed'),
    );
  };
  if (typeof fetched !== 'string') {
    return (
      <section className="stack" aria-label="Licences">
        {fetched.map((each) => (
          <LicenceText key={each.text} {...each} />
        ))}
      </section>
    );
  }
  return (
    <>
      <button type="button" className="tool" disabled={fetched === 'fetching'} onClick={fetchThem}>
        Show the licences
      </button>
      <p role="status" className="hint">
        {fetched === 'failed' &&
          'They could not be fetched. See that this page can be reached, and try again.'}
      </p>
    </>
  );
};
