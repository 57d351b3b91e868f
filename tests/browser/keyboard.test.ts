import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { DESKTOP, describeBrowser, inStudio, Served } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

/** What has the focus, as it is called. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLInputElement | null;
    if (!at || at === document.body) return '';
    const label = at.labels?.[0]?.textContent;
    return (at.getAttribute('aria-label') ?? label ?? at.textContent ?? '').trim();
  });

/** What stands in the same line of a list as what has the focus. */
const beside = (page: Page): Promise<string> =>
  page.evaluate(() => document.activeElement?.closest('li')?.textContent ?? '');

/** Whether something that can have the focus is called so: what has not come yet cannot be passed by. */
const isThere = (called: string): boolean =>
  [...document.querySelectorAll('a, button, input, textarea, select, summary')].some((each) => {
    const label = (each as HTMLInputElement).labels?.[0]?.textContent;
    const name = each.getAttribute('aria-label') ?? label ?? each.textContent ?? '';
    return new RegExp(called).test(name.trim());
  });

/** Goes on with the Tab key alone until what is called so (and stands beside such words) has the focus. */
async function tabTo(page: Page, called: RegExp, words = /^/): Promise<void> {
  await page.waitForFunction(isThere, called.source);
  for (let step = 0; step < 250; step++) {
    await page.keyboard.press('Tab');
    if (called.test(await focused(page)) && words.test(await beside(page))) return;
  }
  throw new Error(`Tab does not come to ${called}`);
}

async function press(page: Page, called: RegExp, key = 'Enter'): Promise<void> {
  await tabTo(page, called);
  await page.keyboard.press(key);
}

const heard = (page: Page, within = 'main') => page.locator(within).first().ariaSnapshot();

describeBrowser('the whole story by keyboard alone, and as it is read aloud', () => {
  const served = new Served();
  beforeAll(() => served.start());
  afterAll(() => served.stop());

  test('photograph, harmony, variant, drapery, formula, passage, palette, sheet, book', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      // Listen from the start: the browser must know of it before a key opens the file dialog.
      const choosing = page.waitForEvent('filechooser');
      await page.goto(served.url);
      await page.getByRole('heading', { name: 'What did you see?' }).waitFor();

      // The first stop leads past the places.
      await page.keyboard.press('Tab');
      expect(await focused(page)).toBe('Go to the contents');
      await tabTo(page, /^Choose a photograph/);
      await page.keyboard.press('Space');
      await (await choosing).setFiles(JAY);
      const piles = page.getByRole('img', { name: /mixed into one pile/ }).first();
      await piles.waitFor();

      await expect.poll(() => heard(page)).toMatch(/img "The harmony: cloths hung side by side/);
      const harmony = await heard(page);
      expect(harmony).toMatch(/img "The harmony: cloths hung side by side, .+ \d+ %/);
      expect(harmony).toMatch(/button ".+" \[pressed\]/);
      expect(harmony).toMatch(/img "mixed: \d+ parts? .+, mixed into one pile/);
      expect(harmony).toMatch(/img "wanted beside mixed: two halves of one patch/);
      // Value, chroma and temperature in words, and how far the mixture is from what is wanted.
      expect(harmony).toMatch(/(low|middle|high) value, .* chroma/);
      expect(harmony).toMatch(/No difference from|trained eye would see|differs plainly/);

      await press(page, /^warmer, clearly/);
      await page.getByRole('button', { name: 'Take this variant' }).waitFor();
      await press(page, /^Take this variant/);
      await press(page, /^Hold the screen to the pile/);
      const held = page.getByRole('dialog', { name: 'Hold it against the dry pile' });
      await held.waitFor();
      expect(await held.ariaSnapshot()).toMatch(
        /wanted and mixed\. (No difference|A trained|It differs)/,
      );
      await page.keyboard.press('Escape');
      await held.waitFor({ state: 'detached' });
      // The page behind is given back a moment after the screen is.
      await expect.poll(() => focused(page)).toBe('Hold the screen to the pile');

      await press(page, /^Keep this harmony/);
      await page.getByText('This harmony is in the book').waitFor();
      await press(page, /^Make a drapery of it/);

      await page.getByRole('heading', { name: 'From the highlight to the deepest fold' }).waitFor();
      const formula = page.getByRole('button', { name: 'Keep it as a formula' });
      await expect.poll(() => formula.isEnabled()).toBe(true);
      const drapery = await heard(page);
      for (const step of [
        'highlight',
        'light',
        'local colour',
        'half-tone',
        'shadow',
        'deepest fold',
      ])
        expect(drapery).toContain(step);
      expect(drapery).toMatch(/\d+ parts? /);
      await press(page, /^Keep this drapery/);
      await page.getByText('This drapery is in the book.').waitFor();
      await press(page, /^Keep it as a formula/);
      await page.getByText(/The formula .* is in the book/).waitFor();

      await press(page, /^Palette$/);
      await page.getByRole('heading', { name: 'Palette', exact: true }).waitFor();
      await press(page, /harmony$/);
      const area = page.getByLabel('Square centimetres').first();
      await area.waitFor();
      await tabTo(page, /^Square centimetres/);
      await page.keyboard.press('ControlOrMeta+a');
      await page.keyboard.type('250');
      await page.keyboard.press('Tab');
      expect(await area.inputValue()).toBe('250');
      await press(page, /^The day’s palette/);
      await page.getByRole('img', { name: /palette with the thumb hole/ }).waitFor();
      await expect.poll(() => heard(page)).toMatch(/along its edge Lead white.+mixed below .+/);
      // A pile is moved without dragging it.
      const order = () => page.locator('.pal-board svg title').first().textContent();
      const laid = await order();
      await press(page, /^brown$/);
      await page.locator('.pal-chosen h3').waitFor();
      await page.keyboard.press('ArrowLeft');
      await expect.poll(order).not.toBe(laid);
      await press(page, /^Morning sheet/);
      await page.locator('.sheet').waitFor();
      await expect.poll(() => heard(page)).toMatch(/Prepare, in this order/);

      await press(page, /^Book$/);
      await tabTo(page, /^jay feather/, /Harmony ·/);
      await page.keyboard.press('Enter');
      await press(page, /^Open in Harmony/);
      await piles.waitFor();
      await expect.poll(() => page.locator('.save-line').innerText()).toMatch(/^Saved/);
    }));
});
