import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { findChromium } from '../tools/chromium.ts';
import { noteSecondTry } from '../tools/second-tries.ts';
import { type DESKTOP, Studio } from '../tools/studio.ts';

export { APP, DESKTOP, PHONE, Served, Studio } from '../tools/studio.ts';

const present = findChromium() !== null;
if (!present && process.env.KINGCUP_MUST === '1') throw new Error('no Chromium');

/** Checks that need a browser; one visible skip where there is none. */
export function describeBrowser(name: string, checks: () => void): void {
  if (present) describe(name, checks);
  else test.skip(`${name} (skipped: no Chromium)`, () => {});
}

/** Whether what the page shows is painted; one that does not run at all counts as painted. */
const paints = (page: Page): Promise<boolean> =>
  page
    .evaluate(
      () =>
        new Promise<boolean>((resolve) => {
          requestAnimationFrame(() => resolve(true));
          setTimeout(() => resolve(false), 5000);
        }),
    )
    .catch(() => true);

/** A new browser with a page in it, for one check; of nothing may the page complain. */
export async function inStudio(
  viewport: typeof DESKTOP,
  scheme: 'light' | 'dark',
  work: (page: Page) => Promise<void>,
  isSecond = false,
): Promise<void> {
  const studio = new Studio();
  let page: Page | null = null;
  try {
    page = await studio.open(viewport, scheme);
    await work(page);
    expect(studio.errors).toEqual([]);
    return;
  } catch (error) {
    // Seldom a Chromium with no screen paints no more, for good, whatever is done to the page.
    if (isSecond || !page || (await paints(page))) throw error;
    noteSecondTry(`${expect.getState().currentTestName}: the browser painted no more frames`);
  } finally {
    await studio.discard();
  }
  await inStudio(viewport, scheme, work, true);
}
