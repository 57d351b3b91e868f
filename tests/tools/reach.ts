import type { Page } from 'playwright-core';

/** How far the page can be scrolled sideways, px. */
export const sideways = (page: Page): Promise<number> =>
  page.evaluate(() => {
    const root = document.documentElement;
    return root.scrollWidth - root.clientWidth;
  });

/** What sticks out to the right and makes the page scroll sideways, outermost first. */
export const stickingOut = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const limit = document.documentElement.clientWidth + 0.5;
    const isClipped = (element: Element): boolean => {
      for (let up = element.parentElement; up; up = up.parentElement)
        if (getComputedStyle(up).overflowX !== 'visible') return true;
      return false;
    };
    return [...document.querySelectorAll<HTMLElement>('body *')]
      .filter((each) => each.getBoundingClientRect().right > limit && !isClipped(each))
      .slice(0, 5)
      .map((each) => each.outerHTML.slice(0, 120));
  });

/**
 * Controls whose box is under 44 px either way. A control in a label is as large as its label; a link
 * within a sentence is exempt, as WCAG 2.5.8 has it.
 */
export const tooSmall = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const LEAST = 43.5;
    /** The rule's own least (2.5.8): piles stand where they lie, and a list beside them has them all at 44. */
    const LEAST_PILE = 24;
    const all = document.querySelectorAll<HTMLElement>(
      'a[href], button, input, select, textarea, summary, [role="button"], [tabindex="0"]',
    );
    const inSentence = (element: HTMLElement) =>
      element.tagName === 'A' &&
      getComputedStyle(element).display === 'inline' &&
      (element.closest('p, li, dd, h1, h2, h3')?.textContent?.trim().length ?? 0) >
        (element.textContent?.trim().length ?? 0);
    return [...all]
      .filter((each) => each.checkVisibility({ visibilityProperty: true, opacityProperty: false }))
      .filter((each) => !inSentence(each) && !each.classList.contains('skip'))
      .map((each) => {
        const box = (
          (each.matches('input') && each.closest('label')) ||
          each
        ).getBoundingClientRect();
        return { each, box };
      })
      .filter(({ each, box }) => {
        const least = each.dataset.seat === undefined ? LEAST : LEAST_PILE;
        return box.width > 0 && (box.width < least || box.height < least);
      })
      .map(
        ({ each, box }) =>
          `${Math.round(box.width)}×${Math.round(box.height)} ${each.outerHTML.slice(0, 110)}`,
      );
  });

/** Steps in the outline: a heading more than one below the one before it, or none of the first. */
export const outlineFaults = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const faults: string[] = [];
    // While something stands before the page, the rest is out of reach.
    const modal = document.querySelector('dialog[open]');
    const all = [
      ...(modal ?? document).querySelectorAll<HTMLElement>('h1, h2, h3, h4, h5, h6'),
    ].filter((each) => each.checkVisibility());
    const firsts = all.filter(({ tagName }) => tagName === 'H1').length;
    if (firsts === 0 && !modal) faults.push('no heading of the first rank');
    let before = modal ? 1 : 0;
    for (const each of all) {
      const rank = Number(each.tagName[1]);
      if (rank > before + 1) faults.push(`h${before} then h${rank}: ${each.textContent}`);
      before = rank;
    }
    return faults;
  });

/**
 * Tabs through the page and names what has the focus and cannot be seen to have it: covered by a bar
 * that stands above the page, outside the window, or without an outline.
 */
export async function hiddenFocus(page: Page, most = 80): Promise<string[]> {
  const faults: string[] = [];
  await page.evaluate(() => {
    (document.activeElement as HTMLElement | null)?.blur();
    scrollTo(0, 0);
  });
  const seen = new Set<string>();
  for (let step = 0; step < most; step++) {
    await page.keyboard.press('Tab');
    const fault = await page.evaluate(() => {
      const focused = document.activeElement as HTMLElement | null;
      if (!focused || focused === document.body) return null;
      const all = [...document.querySelectorAll('*')];
      const which = `${all.indexOf(focused)}`;
      const face = focused.matches('input') ? (focused.closest('label') ?? focused) : focused;
      const box = face.getBoundingClientRect();
      const words = focused.outerHTML.slice(0, 110);
      if (box.bottom <= 0 || box.top >= innerHeight)
        return { which, words: `outside the window: ${words}` };
      const top = Math.max(box.top, 0);
      const bottom = Math.min(box.bottom, innerHeight);
      // The whole must not be hidden by what authors put there: some point of it is to be seen.
      const points = [0.1, 0.3, 0.5, 0.7, 0.9].flatMap((y) =>
        [0.1, 0.5, 0.9].map((x) => [box.left + x * box.width, top + y * (bottom - top)] as const),
      );
      const isSeen = points.some(([x, y]) => {
        const there = document.elementFromPoint(x, y);
        return there !== null && (face.contains(there) || there.contains(face));
      });
      if (!isSeen) return { which, words: `covered: ${words}` };
      const marks = [focused, face, focused.nextElementSibling, focused.parentElement]
        .filter((each): each is HTMLElement => each instanceof HTMLElement)
        .map((each) => getComputedStyle(each));
      const hasMark = marks.some(
        ({ outlineStyle, outlineWidth }) =>
          outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
      );
      return { which, words: hasMark ? '' : `no outline: ${words}` };
    });
    if (fault === null) break;
    if (seen.has(fault.which)) break;
    seen.add(fault.which);
    if (fault.words !== '') faults.push(fault.words);
  }
  return faults;
}
