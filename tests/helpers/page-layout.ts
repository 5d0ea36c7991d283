import type { CDPSession, Page } from 'playwright-core';

/**
 * Waits until the page has come to rest in its size: its letters are here, and nothing has moved for three frames (what
 * asks for its own size hears of it after a frame, and is drawn anew in the next). A page that never rests is let be.
 */
export const settled = async (page: Page): Promise<void> => {
  await page.evaluate(async () => {
    await document.fonts.ready;
    const places = (): string =>
      [...document.body.querySelectorAll('*')]
        .map((each) => {
          const { x, y, width, height } = each.getBoundingClientRect();
          return `${x} ${y} ${width} ${height}`;
        })
        .join();
    let before = '';
    for (let frames = 0, still = 0; frames < 30 && still < 3; frames += 1) {
      await new Promise(requestAnimationFrame);
      const now = places();
      still = now === before ? still + 1 : 0;
      before = now;
    }
  });
};

const sessions = new WeakMap<Page, Promise<CDPSession>>();

/** Gives a page another size. The browser's window stays as it is: to change that too takes half a second. */
export const sizePage = async (page: Page, [width, height]: readonly [number, number]): Promise<void> => {
  const session = sessions.get(page) ?? page.context().newCDPSession(page);
  sessions.set(page, session);
  await (await session).send('Emulation.setDeviceMetricsOverride', {
    width,
    height,
    screenWidth: width,
    screenHeight: height,
    deviceScaleFactor: 1,
    mobile: false,
  });
  await page.waitForFunction(([wide, high]) => window.innerWidth === wide && window.innerHeight === high, [
    width,
    height,
  ] as const);
};

/** Gives the open page another size and waits until it has come to rest in it. */
export const resize = async (page: Page, size: readonly [number, number]): Promise<void> => {
  await sizePage(page, size);
  await settled(page);
};

/**
 * What stays wrong. What is gone when it is looked at again was wrong for as long as the page took to follow; on a slow
 * machine that may be a while.
 */
export const lasting = async (look: () => Promise<readonly string[]>): Promise<readonly string[]> => {
  const end = performance.now() + 5000;
  let found = await look();
  while (found.length > 0 && performance.now() < end) found = await look();
  return found;
};

/** What a player cannot read or reach at this size, one sentence each; empty when all is well. */
export const layoutProblems = (page: Page, { covered }: { readonly covered: boolean }) =>
  page.evaluate((isCovered) => {
    const problems: string[] = [];
    const visible = (element: Element): boolean => {
      const style = getComputedStyle(element);
      const { width, height } = element.getBoundingClientRect();
      return (
        style.visibility !== 'hidden' &&
        style.display !== 'none' &&
        style.clipPath === 'none' &&
        width > 1 &&
        height > 1
      );
    };
    const nameOf = (element: Element): string =>
      `${element.tagName.toLowerCase()}.${element.className} “${(element.textContent ?? '').trim().slice(0, 40)}”`;
    const root = document.documentElement;
    if (root.scrollWidth > root.clientWidth + 1)
      problems.push(`the page is ${root.scrollWidth} px wide, the window ${root.clientWidth}`);

    const held = document.querySelector('.panel-body');
    if (held && held.scrollWidth > held.clientWidth + 1)
      problems.push(`the panel holds ${held.scrollWidth} px, and is ${held.clientWidth} wide`);

    // Text in the places that are read must not be cut.
    const texts =
      '.masthead :is(p, button, strong), .transport :is(button, .chosen, label), .fit :is(h2, th, td, p, .tap), .turn :is(strong, p)';
    for (const element of document.querySelectorAll<HTMLElement>(texts)) {
      if (!visible(element) || element.closest('.unseen')) continue;
      const cut =
        element.scrollWidth > element.clientWidth + 2 && getComputedStyle(element).display !== 'inline';
      if (cut)
        problems.push(`${nameOf(element)} is cut: ${element.scrollWidth} px in ${element.clientWidth}`);
    }
    for (const chosen of document.querySelectorAll<HTMLElement>('.chosen')) {
      if (visible(chosen) && chosen.scrollHeight > chosen.clientHeight + 1)
        problems.push(`${nameOf(chosen)} is cut: ${chosen.scrollHeight} px high in ${chosen.clientHeight}`);
    }

    // Chords stand in their bar: an em is a little taller than its letters.
    for (const chord of document.querySelectorAll<HTMLElement>('.bar .chord')) {
      const room = chord.closest('.names')?.getBoundingClientRect();
      if (!room || !visible(chord)) continue;
      const { top, bottom, left, right } = chord.getBoundingClientRect();
      const air = 0.2 * Number.parseFloat(getComputedStyle(chord).fontSize);
      const cut =
        top < room.top - air || bottom > room.bottom + air || left < room.left - 1 || right > room.right + 1;
      if (cut) problems.push(`${nameOf(chord)} is cut in its bar`);
    }

    // Boxes that stand side by side must not lie over each other.
    const boxes = [...document.querySelectorAll('.masthead, .form > .card, .fit, .reading > .map')].filter(
      visible,
    );
    const overlap = (a: DOMRect, b: DOMRect): boolean =>
      Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
      Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 1;
    boxes.forEach((a, i) => {
      for (const b of boxes.slice(i + 1)) {
        if (overlap(a.getBoundingClientRect(), b.getBoundingClientRect()))
          problems.push(`${nameOf(a)} and ${nameOf(b)} overlap`);
      }
    });
    const rows = ['.masthead', '.transport'];
    for (const row of rows) {
      const members = [...(document.querySelector(row)?.children ?? [])].filter(visible);
      members.forEach((a, i) => {
        for (const b of members.slice(i + 1)) {
          if (overlap(a.getBoundingClientRect(), b.getBoundingClientRect()))
            problems.push(`${nameOf(a)} and ${nameOf(b)} overlap`);
        }
      });
    }

    // The Now card is read while playing: it is wholly in view, between the bars at top and bottom.
    const now = document.querySelector('.fit.now')?.getBoundingClientRect();
    const transport = document.querySelector('.transport')?.getBoundingClientRect();
    if (!isCovered && now && transport) {
      if (now.top < -1) problems.push('the Now card begins above the window');
      if (now.bottom > transport.top + 1)
        problems.push(
          `the Now card ends ${Math.round(now.bottom - transport.top)} px below the transport's edge`,
        );
    }
    // No tone of a single chord is scrolled out of it.
    for (const tone of document.querySelectorAll('.fit.now .tones tr, .fit.now .gaps')) {
      const room = tone.closest('.fit-chords')?.getBoundingClientRect();
      const alone = tone.closest('.fit')?.querySelectorAll('.tones').length === 1;
      if (room && alone && visible(tone) && tone.getBoundingClientRect().bottom > room.bottom + 4)
        problems.push(`${nameOf(tone)} is scrolled out of the Now card`);
    }
    // So is the bar being heard; a panel may need its room.
    const heard = document.querySelector('.bars [aria-current="true"]')?.getBoundingClientRect();
    if (!isCovered && heard && transport && !document.querySelector('.panel')) {
      if (heard.top < -1 || heard.bottom > transport.top + 1)
        problems.push(`the bar being heard ends ${Math.round(heard.bottom - transport.top)} px too low`);
    }

    // A sentence to the player covers nothing that is read while playing, beyond the card's rounded edge.
    const notice = document.querySelector('.notices:has(.notice)')?.getBoundingClientRect();
    if (notice && !isCovered) {
      for (const element of document.querySelectorAll(
        '.fit.now, .form > .turn, .bars [aria-current="true"], .masthead',
      )) {
        const { top, bottom } = element.getBoundingClientRect();
        const covers = Math.min(bottom, notice.bottom) - Math.max(top, notice.top);
        if (visible(element) && covers > 4)
          problems.push(`${Math.round(covers)} px of ${nameOf(element)} are under a notice`);
      }
    }

    // Whatever a drawing lays over its sounds lies over them.
    for (const over of document.querySelectorAll('.line-path')) {
      const [a, b] = [over.getBoundingClientRect(), over.parentElement?.getBoundingClientRect()];
      if (b && visible(over) && Math.abs(a.top - b.top) > 30)
        problems.push(`the way of a line lies ${Math.round(b.top - a.top)} px beside its drawing`);
    }

    // Nothing in an open panel leaves it, but for what scrolls by itself.
    const scrolls = (element: Element | null): boolean =>
      element !== null &&
      !element.matches('.panel') &&
      (/auto|scroll/.test(getComputedStyle(element).overflowX) &&
      element.scrollWidth > element.clientWidth + 1
        ? true
        : scrolls(element.parentElement));
    const panel = document.querySelector('.panel')?.getBoundingClientRect();
    if (panel) {
      for (const element of document.querySelectorAll('.panel *')) {
        const { right } = element.getBoundingClientRect();
        if (right <= panel.right + 1 || !visible(element) || element.closest('.unseen')) continue;
        if (!scrolls(element.parentElement))
          problems.push(`${nameOf(element)} leaves its panel by ${Math.round(right - panel.right)} px`);
      }
    }

    // Tables of chords stand in their card.
    for (const table of document.querySelectorAll('.fit .tones')) {
      const room = table.closest('.fit')?.getBoundingClientRect();
      if (room && visible(table) && table.getBoundingClientRect().right > room.right + 1)
        problems.push(`${nameOf(table)} leaves its card`);
    }

    // Stop is in reach whatever is open.
    const play = document.querySelector('.play')?.getBoundingClientRect();
    if (play) {
      const hit = document.elementFromPoint((play.left + play.right) / 2, (play.top + play.bottom) / 2);
      if (!hit?.closest('.play'))
        problems.push(`Play and Stop are covered by ${hit ? nameOf(hit) : 'nothing'}`);
    } else problems.push('there is no Play or Stop');
    return problems;
  }, covered);

/** Everything of a kind whose box is not wholly between the head and the transport. */
export const outOfSight = (page: Page, selector: string): Promise<readonly string[]> =>
  page.locator(selector).evaluateAll((all) => {
    const end = document.querySelector('.transport')?.getBoundingClientRect().top ?? 0;
    return all.flatMap((each) => {
      const { top, bottom } = each.getBoundingClientRect();
      let room = { top: 0, bottom: end };
      for (let box = each.parentElement; box !== null; box = box.parentElement) {
        if (getComputedStyle(box).overflowY === 'visible') continue;
        const around = box.getBoundingClientRect();
        room = { top: Math.max(room.top, around.top), bottom: Math.min(room.bottom, around.bottom) };
      }
      return top < room.top - 3 || bottom > room.bottom + 3
        ? [`${each.getAttribute('data-sound') ?? each.textContent}: ${Math.round(bottom)}`]
        : [];
    });
  });
