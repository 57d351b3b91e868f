import type { CDPSession, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from '../tools/axe.ts';
import { hiddenFocus, outlineFaults, stickingOut, tooSmall } from '../tools/reach.ts';
import { emptyPlaces, keptInBook, onward, toHarmony, unfold } from '../tools/tour.ts';
import { describeBrowser, PHONE, Served, Studio } from './open.ts';

/** The narrowest that WCAG 2.2 asks for (1.4.10 Reflow): 1280 px at four times. */
const NARROW = { width: 320, height: 640 };
/** After so long drawings are taken to stay too wide. */
const FIT_MS = 60_000;

/** What is wrong with a place as it stands, each with the state in which it is. */
async function survey(page: Page, session: CDPSession): Promise<string[]> {
  const faults: string[] = [];
  const note = (state: string, found: readonly string[]) =>
    faults.push(...found.map((words) => `${state}: ${words}`));
  const noSideways = async (state: string) => {
    // Drawings are laid anew some time after the window has changed.
    const fits = () => {
      const { scrollWidth, clientWidth } = document.documentElement;
      return scrollWidth <= clientWidth;
    };
    const doesFit = await page.waitForFunction(fits, undefined, { timeout: FIT_MS }).then(
      () => true,
      () => false,
    );
    if (!doesFit) note(`${state}, scrolls sideways`, await stickingOut(page));
  };

  note('focus', await hiddenFocus(page, 30));
  await unfold(page);
  note('outline', await outlineFaults(page));
  note('under 44 px', await tooSmall(page));

  await page.setViewportSize(NARROW);
  await noSideways('320 px');
  await page.setViewportSize(PHONE);

  // The reader's own letters at twice the size, as a browser's settings do it.
  await session.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
  await noSideways('letters twice as large');
  // In dark: in light, and with letters of the usual size, each place's own test has looked.
  await page.emulateMedia({ colorScheme: 'dark' });
  note('letters twice as large, dark', await violations(page));
  await page.emulateMedia({ colorScheme: 'light' });
  // Both together: ten letters to a line.
  await page.setViewportSize(NARROW);
  await noSideways('320 px, letters twice as large');
  note('320 px, letters twice as large', await violations(page));
  await page.setViewportSize(PHONE);
  await session.send('Page.setFontSizes', { fontSizes: { standard: 16, fixed: 13 } });
  return faults;
}

describeBrowser('every place, for everyone', () => {
  const served = new Served();
  const studio = new Studio();
  let page: Page;
  let session: CDPSession;
  const found: Record<string, string[]> = {};
  const stop = async (place: string) => {
    const faults = [...new Set(await survey(page, session))];
    if (faults.length > 0) found[place] = faults;
  };

  beforeAll(async () => {
    await served.start();
    page = await studio.open(PHONE);
    session = await page.context().newCDPSession(page);
  });
  afterAll(async () => {
    await studio.discard();
    await served.stop();
  });

  test('narrow, dark, with large letters, by keyboard and by thumb', async () => {
    await emptyPlaces(page, served.url, stop);
    await toHarmony(page, served.url, stop);
    await onward(page, stop);
    expect(found).toEqual({});
  });

  test('a place takes the focus before it is seen: a key pressed at once goes on from there', async () => {
    /** Presses what is found so, and tells what has the focus as soon as such words stand in a heading. */
    const arrive = (link: string, heading: string) =>
      page.evaluate(
        ([link, heading]) =>
          new Promise<string>((resolve) => {
            const observer = new MutationObserver(() => {
              const there = [...document.querySelectorAll('main h1, main h2')];
              if (!there.some(({ textContent }) => textContent === heading)) return;
              observer.disconnect();
              resolve(document.activeElement?.textContent ?? '');
            });
            observer.observe(document.getElementById('contents')!, {
              subtree: true,
              childList: true,
              characterData: true,
            });
            document.querySelector<HTMLElement>(link)!.click();
          }),
        [link, heading] as const,
      );
    expect(await arrive('.places a[href="#/walk"]', 'What did you see?')).toBe('What did you see?');
    expect(await arrive('.places a[href="#/book"]', 'Book')).toBe('Book');
    await keptInBook(page).waitFor();
    const entry = (await keptInBook(page).getAttribute('href'))!;
    const name = 'By the mill stream';
    expect(await arrive(`main a[href="${entry}"]`, name)).toBe(name);
  });

  test('in the reader’s own colours paint keeps its own, and what is chosen is told', async () => {
    await page.goto(`${served.url}#/book/shelf`);
    await page.locator('.shelf-lines li').first().waitFor();
    const stroke = page.locator('.shelf-lines svg path').first();
    const fill = () => stroke.evaluate((path) => getComputedStyle(path).fill);
    const own = await fill();
    const chosen = page.locator('.choice input:checked + span').first();
    const other = page.locator('.choice input:not(:checked) + span').first();
    const ground = (of: typeof chosen) =>
      of.evaluate((element) => getComputedStyle(element).backgroundColor);
    await page.emulateMedia({ forcedColors: 'active' });
    expect(await fill()).toBe(own);
    expect(await ground(chosen)).not.toBe(await ground(other));
    await page.emulateMedia({ forcedColors: 'none' });
  });

  test('nothing moves for those who ask for stillness', async () => {
    const moving = await page.evaluate(() =>
      [...document.querySelectorAll('*')]
        .filter((each) => {
          const { transitionDuration, animationName } = getComputedStyle(each);
          return transitionDuration !== '0s' || animationName !== 'none';
        })
        .map((each) => each.outerHTML.slice(0, 100)),
    );
    expect(moving).toEqual([]);
  });

  test('paint with or without glare: drawings and mixtures follow at once, and it is undone', async () => {
    await page.goto(`${served.url}#/book/shelf`);
    const stroke = page.locator('.shelf-lines li').last().locator('svg path').first();
    const fill = () => stroke.getAttribute('fill');
    const before = await fill();
    await page.getByText('Varnished, without glare', { exact: true }).click();
    await page.getByText(/taken as varnished and seen without glare now/).waitFor();
    await expect.poll(fill).not.toBe(before);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(fill).toBe(before);
    expect(studio.errors).toEqual([]);
  });
});
