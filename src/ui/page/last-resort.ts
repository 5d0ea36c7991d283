import { messageOf } from '../../core/theory/thrown';

/**
 * What is drawn where the page itself cannot be: without React and without reading any setting, so that nothing kept
 * can break it.
 */
interface Kept {
  names(): readonly string[];
  /** Takes a value out of use; it stays as a copy. */
  retire(name: string): { readonly kind: string };
}

interface Options {
  readonly document: Document;
  /** What is drawn is put in the place of this element. */
  readonly page: Element;
  readonly error: unknown;
  readonly kept: Kept;
  readonly reload: () => void;
  /** Stops the band, where there is one. */
  readonly stop: (() => void) | null;
}

const FAILED =
  'That did not work: the browser does not let this page change what it keeps. Delete the site data of this page in the browser’s own settings.';

/** Says that the page cannot be drawn and offers to stop the band, to try again and to start afresh. */
export const showLastResort = ({ document, page, error, kept, reload, stop }: Options): void => {
  const element = <Name extends keyof HTMLElementTagNameMap>(
    name: Name,
    text: string,
    className = '',
  ): HTMLElementTagNameMap[Name] =>
    Object.assign(document.createElement(name), { textContent: text, className });
  const said = element('p', '', 'wrong');
  said.setAttribute('role', 'alert');
  const button = (text: string, act: () => void): HTMLButtonElement => {
    const made = Object.assign(element('button', text, 'tool'), { type: 'button' });
    made.addEventListener('click', act);
    return made;
  };
  const retire = (names: readonly string[]): void => {
    const all = names.every((name) => kept.retire(name).kind === 'written');
    if (all) reload();
    else said.textContent = FAILED;
  };
  const heading = Object.assign(element('h1', 'Combshed cannot be shown'), { tabIndex: -1 });
  const host = element('main', '', 'last-resort');
  host.append(
    heading,
    ...(stop === null ? [] : [button('Stop', stop)]),
    element(
      'p',
      'That is a fault of this program, perhaps with something that it keeps in this browser. Nothing you made is deleted here: what is put away stays as a copy, which you find under Help, Care.',
    ),
    element('p', `What went wrong: ${messageOf(error)}`, 'hint'),
    button('Try again', reload),
    button('Start with fresh settings, the old ones are kept', () => retire(['settings'])),
    button('Put everything away and start afresh, all of it is kept', () => retire(kept.names())),
    said,
  );
  page.replaceWith(host);
  heading.focus();
};
