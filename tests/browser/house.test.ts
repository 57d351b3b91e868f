import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { violations, violationsInBoth } from '../tools/axe.ts';
import { onDisk } from './disk.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, Studio, slowTime } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
/** Goes where an address leads, as a link from elsewhere does. */
const at = (page: Page, hash: string) =>
  page.evaluate((to) => {
    location.hash = to;
  }, hash);

async function bringSample(page: Page, url: string): Promise<void> {
  await page.goto(url);
  await button(page, 'Look through the sample book').click();
  await page.getByText(/^Brought in: \d+ entries/).waitFor();
  await button(page, 'Close').click();
}

describeBrowser('a house that one finds the way in', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  test('the sample book comes in, is marked, and goes in one touch; what is the painter’s stays', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.goto(served.url);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await button(page, 'Keep this harmony').click();
      await page.getByText('This harmony is in the book').waitFor();
      await page.getByLabel('Name').last().fill('My own jay');
      await at(page, '#/book/copies');
      await button(page, 'Look through the sample book').click();
      await page.getByText('The sample book is here').waitFor();
      const own = page.getByRole('link', { name: /^My own jay/ });
      const samples = page.locator('.row .sample-mark');
      await own.first().waitFor();
      await expect.poll(() => samples.count()).toBeGreaterThan(3);
      expect(await violationsInBoth(page)).toEqual([]);

      await button(page, 'Throw the sample book away').click();
      await page.getByText('The sample book is in the bin').waitFor();
      await expect.poll(() => samples.count()).toBe(0);
      await own.first().waitFor();
      await button(page, 'Undo').click();
      await expect.poll(() => samples.count()).toBeGreaterThan(3);
      await button(page, 'Throw the sample book away').click();
      await expect.poll(() => samples.count()).toBe(0);
      await page.reload();
      await own.first().waitFor();
      await expect.poll(() => samples.count()).toBe(0);
    }));

  test('every link opens with no server, and going back leads to where one was', () =>
    inStudio(PHONE, 'light', async (page) => {
      await slowTime(page);
      await bringSample(page, served.url);
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await served.stop();
      for (const [link, heading] of [
        ['#/harmony/sample-harmony-kingcup', 'Weir in September'],
        ['#/drapery/sample-drapery-miller', 'The miller'],
        ['#/palette/sample-passage-gown', 'The girl’s gown'],
        ['#/palette/sample-palette-sluice', 'Palette'],
        ['#/palette/2025-09-15', 'Palette'],
        ['#/palette/sheet/2025-09-15', 'Morning sheet'],
        ['#/book/sample-formula-gown', 'Blue gown'],
        ['#/book/guide/figures', 'What the figures mean, and what they do not'],
        ['#/book/shelf', 'Shelf'],
        ['#/nowhere/at-all', 'No such page'],
        ['#/harmony/%E0%A4%A', 'No such page'],
      ] as const) {
        await page.goto(`${served.url}${link}`);
        await page.reload();
        await page.getByRole('heading', { name: heading, exact: true }).first().waitFor();
        if (/guide|nowhere/.test(link)) expect(await violations(page), link).toEqual([]);
      }
      await page.getByRole('link', { name: 'Open the book' }).click();
      // Of the day that the sheet's address names, not of today.
      await at(page, '#/palette/sheet/2025-09-15');
      await page.getByText('Monday 15 September 2025').first().waitFor();

      // What names nothing says so, with a way on.
      for (const gone of ['#/harmony/gone-gone', '#/drapery/gone-gone', '#/palette/gone-gone']) {
        await at(page, gone);
        await page.getByText(/It may be in the bin/).waitFor();
        await page.locator('main').getByRole('link', { name: 'Open the book' }).waitFor();
      }

      // Back from a harmony to the place in the list, and to the link, from which it was opened.
      await at(page, '#/book/guide');
      await page.getByRole('heading', { name: 'How Kingcup works' }).waitFor();
      const link = page.locator('main').getByRole('link', { name: 'Palette', exact: true }).last();
      await link.scrollIntoViewIfNeeded();
      const was = await page.evaluate(() => scrollY);
      expect(was).toBeGreaterThan(500);
      await link.click();
      await page.getByRole('heading', { name: 'Palette', exact: true }).waitFor();
      await expect.poll(() => page.evaluate(() => scrollY)).toBe(0);
      await page.goBack();
      await expect.poll(() => page.evaluate(() => scrollY)).toBeGreaterThan(was - 40);
      await expect
        .poll(() => page.evaluate(() => document.activeElement?.textContent))
        .toBe('Palette');
    }));

  test('from a kept harmony on, the next step is always at hand, down to the sheet', () =>
    inStudio(PHONE, 'light', async (page) => {
      await bringSample(page, served.url);
      await at(page, '#/harmony/sample-harmony-jay-feather');
      await button(page, 'Make a drapery of it').click();
      await button(page, 'Keep this drapery').click();
      await button(page, 'Lay it out on the palette').click();
      await page.locator('main').getByRole('link', { name: 'The day’s palette' }).last().click();
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await button(page, 'Print, or keep as PDF').waitFor();
      // The sample book's own leftover is for the sample's own day.
      await expect.poll(() => page.getByText('Use first').count()).toBe(0);
    }));

  test('where decimals have a comma, it is shown and taken; inches are taken where a canvas is measured', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open(DESKTOP, 'light', 'de-DE');
      await bringSample(page, served.url);
      await at(page, '#/palette/sample-passage-gown');
      const width = page.getByLabel('Canvas width, cm');
      await width.fill('60,5');
      await width.blur();
      await page.getByText(/23,8 × 17,7 inches/).waitFor();
      await width.fill('24 in');
      await width.blur();
      await page.getByText(/24,0 × 17,7 inches/).waitFor();
      await expect.poll(() => width.inputValue()).toBe('60,96');
      await width.fill('60.25');
      await width.blur();
      await page.getByText(/23,7 × 17,7 inches/).waitFor();

      await at(page, '#/palette/sheet/2025-09-15');
      const paper = page.locator('.pal-paper');
      await expect.poll(() => paper.innerText()).toMatch(/\d,\d+ cm³/);
      expect(await paper.innerText()).not.toMatch(/\d\.\d/);

      await at(page, '#/harmony/sample-harmony-kingcup');
      await page.getByText('Measure and mix it').first().click();
      const all = page.getByLabel('For a pile of so many millilitres').first();
      await all.fill('2,5');
      await all.blur();
      expect(await all.inputValue()).toBe('2,5');
      await at(page, '#/book/sample-harmony-kingcup');
      await page
        .getByText(/8\. September 2025/)
        .first()
        .waitFor();
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('a photograph that another app hands over is kept, with or without the network', () =>
    inStudio(PHONE, 'light', async (page) => {
      await page.goto(served.url);
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      const manifest = await (await fetch(`${served.url}manifest.webmanifest`)).json();
      const { action, method, params } = manifest.share_target;
      expect([action, method]).toEqual(['/share', 'POST']);
      for (const { url, icons } of manifest.shortcuts) {
        expect(url).toMatch(/^\/#\//);
        expect((await fetch(served.url + icons[0].src)).status).toBe(200);
      }
      await served.stop();
      // What the device sends: the page itself cannot send a form.
      const to = await page.evaluate(
        async ({ action, field }) => {
          const photo = await (await fetch('/samples/rowan-branch.jpg')).blob();
          const form = new FormData();
          form.append(field, new File([photo], 'rowan at the gate.jpg', { type: photo.type }));
          const answer = await fetch(action, { method: 'POST', body: form });
          return answer.url;
        },
        { action, field: params.files[0].name },
      );
      expect(['/', '/index.html']).toContain(new URL(to).pathname);
      await page.goto(`${served.url}#/walk`);
      await page.reload();
      await page.getByRole('heading', { name: 'rowan at the gate' }).waitFor();
      await button(page, 'Keep this harmony').waitFor();
      // It is taken once.
      await page.goto(`${served.url}#/walk`);
      await page.reload();
      await page.getByRole('article').first().waitFor();
      await expect.poll(() => page.getByRole('article').count()).toBe(1);
    }));

  test('before the first save it offers to be put on the device, by the browser or by hand', () =>
    inStudio(PHONE, 'light', async (page) => {
      // A device whose pages know that they were not opened from a home screen, and whose browser asks nothing.
      await page.addInitScript(() => {
        Object.defineProperty(navigator, 'standalone', { value: false });
        addEventListener('beforeinstallprompt', (event) => {
          if (event.isTrusted) event.stopImmediatePropagation();
        });
      });
      await page.goto(served.url);
      const hint = page.getByRole('complementary', { name: 'Kingcup on this device' });
      await hint.getByText(/share menu/).waitFor();
      expect(await violationsInBoth(page)).toEqual([]);
      // Where the browser itself asks, there is a button for it.
      await page.evaluate(() => {
        const event = new Event('beforeinstallprompt', { cancelable: true });
        Object.assign(event, { prompt: async () => ({ outcome: 'dismissed' }) });
        dispatchEvent(event);
      });
      await button(page, 'Put it on this device').waitFor();
      await hint.getByRole('button', { name: 'Later' }).click();
      await hint.waitFor({ state: 'detached' });
      await expect
        .poll(() => page.evaluate(onDisk, { table: 'meta', key: 'screen install later' }))
        .toBe('yes');
      await page.reload();
      await page.getByRole('heading', { name: 'What did you see?' }).waitFor();
      await button(page, 'Look through the sample book').waitFor();
      await expect.poll(() => hint.count()).toBe(0);
    }));
});
