import type { Page } from 'playwright-core';
import { describe, expect, test } from 'vitest';
import { findChromium } from '../tools/chromium.ts';
import { noteSecondTry } from '../tools/second-tries.ts';
import { Studio as Bare, type DESKTOP } from '../tools/studio.ts';

export { APP, DESKTOP, PHONE, Served, still } from '../tools/studio.ts';

const present = findChromium() !== null;
if (!present && process.env.KINGCUP_MUST === '1') throw new Error('no Chromium');

/** Checks that need a browser; one visible skip where there is none. */
export function describeBrowser(name: string, checks: () => void): void {
  if (present) describe(name, checks);
  else test.skip(`${name} (skipped: no Chromium)`, () => {});
}

declare global {
  interface Window {
    /** Every notice that the page has shown. */
    told?: string[];
    /** Of {@link holdWork}. */
    letWorkGo?: () => void;
  }
}

/** Runs in a page before the app: notes every notice, for a plain one goes by itself after some seconds. */
function noteNotices(): void {
  const told: string[] = [];
  window.told = told;
  const look = () => {
    for (const { textContent } of document.querySelectorAll('.notice p'))
      if (textContent && told.at(-1) !== textContent) told.push(textContent);
  };
  const every = { subtree: true, childList: true, characterData: true };
  new MutationObserver(look).observe(document, every);
}

/** A browser as a painter's is, in which no notice is missed. */
export class Studio extends Bare {
  override async open(...how: Parameters<Bare['open']>): Promise<Page> {
    const page = await super.open(...how);
    await this.context.addInitScript(noteNotices);
    return page;
  }
}

/**
 * From its next load on the page's time goes a thousand times slower: a notice with a way back is not put away on
 * another page because the machine was slow, and the place that one goes back to is sought for as long as it takes.
 */
export async function slowTime(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const now = performance.now.bind(performance);
    performance.now = () => now() / 1000;
  });
}

/** From its next load on the page's day begins at this hour, local time: no test comes upon a midnight. */
export async function wakeAt(studio: Studio, hour: string): Promise<void> {
  await studio.context.addInitScript((shift) => {
    const { Date: Real } = globalThis;
    globalThis.Date = class extends Real {
      constructor(...given: []) {
        if (given.length === 0) super(Real.now() + shift);
        else super(...given);
      }
      static override now = () => Real.now() + shift;
    } as DateConstructor;
  }, Date.parse(hour) - Date.now());
}

/**
 * From here on the page's workers are sent nothing, so that no work can end before it is stopped.
 * @returns sends what was held back, to those that were not ended meanwhile, and holds nothing more
 */
export async function holdWork(page: Page): Promise<() => Promise<void>> {
  await page.evaluate(() => {
    const { postMessage } = Worker.prototype;
    const held: (() => void)[] = [];
    Worker.prototype.postMessage = function (this: Worker, ...given: [message: unknown]) {
      held.push(() => postMessage.apply(this, given));
    };
    window.letWorkGo = () => {
      Worker.prototype.postMessage = postMessage;
      for (const send of held) send();
    };
  });
  return () => page.evaluate(() => window.letWorkGo?.());
}

/** Waits until a page has shown a notice with these words since it was loaded, whether it still stands or not. */
export async function wasTold(page: Page, words: string): Promise<void> {
  await page.waitForFunction((part) => window.told?.some((one) => one.includes(part)), words);
}

/** Turns of the page's own timer within which a frame must come: in a slow page they are slow as well. */
const TURNS = 400;

/** Whether what the page shows is painted; one that does not run at all counts as painted. */
const paints = (page: Page): Promise<boolean> =>
  page
    .evaluate(
      (turns) =>
        new Promise<boolean>((resolve) => {
          requestAnimationFrame(() => resolve(true));
          const turn = (left: number) => {
            if (left === 0) resolve(false);
            else setTimeout(() => turn(left - 1), 50);
          };
          turn(turns);
        }),
      TURNS,
    )
    .catch(() => true);

/** Ends once the page of a browser paints no more, or once it is no longer watched. */
async function paintsNoMore(studio: Studio, watched: AbortSignal): Promise<void> {
  while (!watched.aborted && (studio.page === null || (await paints(studio.page))))
    await new Promise((done) => setTimeout(done, 1000));
}

/**
 * A new browser with a page in it, for one check; of nothing may the page complain, and the check ends with its first
 * complaint. `work` may close the browser and open it again.
 */
export async function inStudio(
  viewport: typeof DESKTOP,
  scheme: 'light' | 'dark',
  work: (page: Page, studio: Studio) => Promise<void>,
  isSecond = false,
): Promise<void> {
  const studio = new Studio();
  const over = new AbortController();
  try {
    const page = await studio.open(viewport, scheme);
    const stuck = await Promise.race([
      work(page, studio).then(() => false),
      studio.complaint,
      paintsNoMore(studio, over.signal).then(() => true),
    ]);
    expect(studio.errors).toEqual([]);
    if (!stuck) return;
  } finally {
    over.abort();
    await studio.discard();
  }
  // Seldom a Chromium with no screen paints no more, for good, whatever is done to the page.
  if (isSecond) throw new Error('twice the browser painted no more frames');
  noteSecondTry(`${expect.getState().currentTestName}: the browser painted no more frames`);
  await inStudio(viewport, scheme, work, true);
}
