import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { hasShared, SHARED } from '../shared.ts';
import { violations } from '../tools/axe.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, Studio } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');
const LADYBIRD = resolve(SHARED, 'photos/ladybird-forget-me-nots.jpg');

const choosePhoto = (page: Page, path: string) =>
  page.getByLabel('Choose a photograph').setInputFiles(path);

// A sample on a desktop is where the story of the short tests begins.
const photographs: [name: string, path: string, viewport: typeof DESKTOP][] = [
  ['a rendered specimen, on a phone', JAY, PHONE],
];
if (hasShared) photographs.push(['a real photograph', LADYBIRD, DESKTOP]);

describeBrowser('from a photograph to a harmony in the book, with no network', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  test.each(photographs)('%s', async (_, path, viewport) => {
    const studio = new Studio();
    const away: string[] = [];
    try {
      const page = await studio.open(viewport);
      page.on('request', (request) => {
        if (!/^(blob:|data:)/.test(request.url()) && !request.url().startsWith(served.url))
          away.push(request.url());
      });
      await page.goto(served.url);
      await page.getByRole('heading', { name: 'What did you see?' }).waitFor();
      expect(await violations(page)).toEqual([]);

      await choosePhoto(page, path);
      const wall = page.locator('.wall');
      await wall.getByRole('button').first().waitFor();
      const colours = await wall.getByRole('button').allInnerTexts();
      expect(colours.length).toBeGreaterThanOrEqual(3);
      expect(colours.length).toBeLessThanOrEqual(7);
      expect(new Set(colours).size).toBe(colours.length);
      await page
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor();
      expect(await page.locator('.bench').first().innerText()).toMatch(/\d+ parts?/);
      expect(await violations(page)).toEqual([]);

      // A variant has its own mixture, takes the place of its origin, and can be undone.
      const folds = page.getByRole('list', { name: 'From cool to warm' });
      await folds.getByRole('button', { name: /cooler, clearly/ }).click();
      const preview = page.locator('.variant-preview');
      await preview
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor();
      await page.getByText('The figures').first().click();
      const figures = page.locator('.bench .figures').first();
      const wanted = await figures.innerText();
      expect(await violations(page)).toEqual([]);
      await preview.getByRole('button', { name: 'Take this variant' }).click();
      await expect.poll(() => figures.innerText()).not.toBe(wanted);
      // What is nearest to it is sought only now.
      await figures.getByText('Nearest of all').waitFor();
      const varied = await figures.innerText();
      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await expect.poll(() => figures.innerText()).toBe(wanted);
      await folds.getByRole('button', { name: /cooler, clearly/ }).click();
      await preview.getByRole('button', { name: 'Take this variant' }).click();
      await expect.poll(() => figures.innerText()).toBe(varied);

      await page.getByLabel('Name').last().fill('What the stream showed');
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');

      // From here on there is no server.
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await served.stop();
      await page.reload();
      await page.getByRole('heading', { name: 'What the stream showed' }).waitFor();
      await page.getByText('The figures').first().click();
      await expect.poll(() => figures.innerText()).toBe(varied);
      expect(await wall.getByRole('button').allInnerTexts()).toEqual(colours);

      await page.getByRole('link', { name: 'Book', exact: true }).click();
      await page.getByRole('link', { name: 'What the stream showed', exact: true }).waitFor();
      expect(await violations(page)).toEqual([]);

      // And after the browser was closed.
      await studio.close();
      const again = await studio.open(viewport);
      await again.goto(`${served.url}#/book`);
      await again.getByRole('link', { name: 'What the stream showed', exact: true }).click();
      await again.getByRole('link', { name: 'Open in Harmony' }).click();
      await again.getByRole('heading', { name: 'What the stream showed' }).waitFor();
      expect(await wallOf(again)).toEqual(colours);
      expect(studio.errors).toEqual([]);
      expect(away).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  const wallOf = async (page: Page) => {
    await page.locator('.wall').getByRole('button').first().waitFor();
    return page.locator('.wall').getByRole('button').allInnerTexts();
  };

  test('rename, delete and undo in the book', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.goto(served.url);
      await choosePhoto(page, JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      await page.getByRole('link', { name: 'Walk', exact: true }).click();
      const card = page.getByRole('article').first();
      await card.getByRole('button', { name: /^Rename/ }).click();
      await card.getByLabel('Name').fill('<b>Blue & black</b>');
      await card.getByRole('button', { name: 'Rename' }).click();
      const named = page.getByRole('link', { name: '<b>Blue & black</b>', exact: true });
      await named.waitFor();
      await page.getByRole('button', { name: /^Delete/ }).click();
      await expect.poll(() => named.count()).toBe(0);
      await page.getByRole('button', { name: 'Undo' }).click();
      await named.waitFor();
      await page.reload();
      await named.waitFor();
    }));

  test.each([
    ['a text file', 'words.jpg', 'no picture at all', /not a photograph/],
    ['an empty file', 'empty.jpg', '', /empty/],
    ['half a photograph', 'half.jpg', null, /breaks off/],
  ])('%s is refused with one sentence, and nothing is lost', (_, name, text, sentence) =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.goto(served.url);
      const whole = readFileSync(JAY);
      await page.getByLabel('Choose a photograph').setInputFiles({
        name,
        mimeType: 'image/jpeg',
        buffer: text === null ? whole.subarray(0, whole.length / 2) : Buffer.from(text),
      });
      await page.getByText(sentence).waitFor();
      expect(await violations(page)).toEqual([]);
      // The next photograph works as if nothing had happened.
      await choosePhoto(page, JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
    }),
  );

  test('it can be installed', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await page.goto(served.url);
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null || true);
      const session = await page.context().newCDPSession(page);
      const { installabilityErrors } = await session.send('Page.getInstallabilityErrors');
      expect(installabilityErrors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });
});
