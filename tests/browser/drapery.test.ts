import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violationsInBoth as violations } from '../tools/axe.ts';
import { onDisk } from './disk.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, slowTime, wasTold } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');
/** Where to write what is on the screen, for a person to judge; nowhere unless it is asked for. */
const PICTURES = process.env.KINGCUP_PICTURES;

async function picture(page: Page, name: string): Promise<void> {
  if (PICTURES) await page.screenshot({ path: resolve(PICTURES, `${name}.png`), fullPage: true });
}

const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });
const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
/** Every cloth is worked out: only then can the drapery be kept. */
const whole = (page: Page) =>
  expect.poll(() => button(page, 'Keep it as a formula').isEnabled()).toBe(true);
const ladder = (page: Page) => page.locator('.drapery-bench .drapery-steps');

describeBrowser('from a harmony to a drapery and its formula in the book', () => {
  const served = new Served();
  beforeAll(() => served.start());
  afterAll(() => served.stop());

  test.each([
    ['desktop', DESKTOP],
    ['phone', PHONE],
  ])('two garments and a trim, on a %s', (device, viewport) =>
    inStudio(viewport, 'light', async (page) => {
      await page.goto(served.url);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await button(page, 'Keep this harmony').waitFor();

      // A variant takes the place of its colour, and the drapery is made of that.
      const folds = page.getByRole('list', { name: 'From cool to warm' });
      await folds.getByRole('button', { name: /warmer, clearly/ }).click();
      await button(page, 'Take this variant').click();
      await button(page, 'Make a drapery of it').click();
      await heading(page, 'From the highlight to the deepest fold').waitFor();
      await whole(page);
      const wall = page.locator('.drapery-wall');
      await expect.poll(() => wall.getByRole('button').count()).toBe(2);
      expect(await wall.locator('.drapery-seen').innerText()).toMatch(/edged with/);
      await expect.poll(() => ladder(page).getByRole('listitem').count()).toBe(6);
      expect(await ladder(page).innerText()).toMatch(/\d+ parts?/);
      await heading(page, 'How they stand to one another').waitFor();
      expect(await page.locator('.drapery-relations').innerText()).toMatch(/is dominant/);
      await picture(page, `drapery-${device}`);
      expect(await violations(page)).toEqual([]);

      // Another stuff masses otherwise; the way is changed, and undone.
      const before = await ladder(page).innerText();
      await page.getByLabel('Its stuff').selectOption('satin');
      await whole(page);
      expect(await ladder(page).innerText()).not.toBe(before);
      await page.getByLabel('Its way').selectOption('shot cloth');
      await whole(page);
      const shot = await ladder(page).innerText();
      await page.getByLabel('Its way').selectOption('as nature had it');
      await whole(page);
      expect(await ladder(page).innerText()).not.toBe(shot);
      await button(page, 'Undo').click();
      await whole(page);
      expect(await ladder(page).innerText()).toBe(shot);

      // A lining is added and looked at; reflected light comes from the other cloth.
      await button(page, 'Add a lining').click();
      await page.locator('.drapery-pick').getByRole('button').first().click();
      await whole(page);
      await page.locator('.drapery-side').getByText('Cloth', { exact: true }).click();
      await page.getByLabel(/^Light thrown back/).check();
      await whole(page);
      await expect.poll(() => ladder(page).getByRole('listitem').count()).toBe(7);
      await ladder(page).locator('summary strong').getByText('shadow', { exact: true }).click();
      await page
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor();
      expect(await violations(page)).toEqual([]);
      await picture(page, `drapery-open-${device}`);

      await ladder(page).locator('summary strong').getByText('shadow', { exact: true }).click();

      await page.getByLabel('Name of the drapery').fill('Cloths of the jay');
      await button(page, 'Keep this drapery').click();
      await page.getByText('This drapery is in the book.').waitFor();
      await button(page, 'Keep it as a formula').click();
      await page.getByText(/The formula “Cloths of the jay” is in the book/).waitFor();
      // Kept once more it makes no second entry.
      await button(page, 'Keep it as a formula').click();
      await wasTold(page, 'The formula “Cloths of the jay” is in the book already');
      await expect.poll(() => page.locator('.save-line').innerText()).toMatch(/^Saved/);
      const kept = await ladder(page).innerText();

      await page.reload();
      await heading(page, 'Cloths of the jay').waitFor();
      await whole(page);
      expect(await ladder(page).innerText()).toBe(kept);
      await page.getByText('This drapery is in the book.').waitFor();

      await page.getByRole('link', { name: 'Begin another' }).click();
      const formula = page.getByRole('link', { name: /Cloths of the jay formula/ });
      await formula.waitFor();
      await page.getByRole('link', { name: /Cloths of the jay drapery/ }).waitFor();
      await formula.click();
      await expect.poll(() => page.locator('.entry').innerText()).toMatch(/deepest fold/i);

      // And a drapery begins from it: its cloths as they were painted.
      if (device === 'desktop') {
        await page.getByRole('button', { name: /^Make a drapery of it/ }).click();
        await heading(page, 'From the highlight to the deepest fold').waitFor();
        await whole(page);
        await expect.poll(() => page.locator('.drapery-wall').getByRole('button').count()).toBe(2);
      }
    }),
  );

  test('it begins empty, with six worked formulas; a glazed sleeve, black and paper', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await slowTime(page);
      await page.goto(`${served.url}#/drapery`);
      await page.getByText('From a worked formula').waitFor();
      const worked = page.locator('main button.drapery-take');
      await expect.poll(() => worked.count()).toBe(6);
      expect(await violations(page)).toEqual([]);
      await picture(page, 'drapery-empty');

      // With no mouse.
      await worked.filter({ hasText: 'Glazed red sleeve' }).focus();
      await page.keyboard.press('Enter');
      await whole(page);
      expect(await ladder(page).innerText()).toMatch(/glazed with .* micrometres/);
      expect(await page.locator('.drapery-bench .drapery-black').innerText()).toMatch(
        /would have chroma \d+ where it has \d+/,
      );
      await picture(page, 'drapery-glazed');
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.drapery-sheet').isVisible()).toBe(true);
      await page.emulateMedia({ media: 'screen' });

      // What is on the bench is still there after a reload, though it was not kept.
      await expect
        .poll(() => page.evaluate(onDisk, { table: 'meta', key: 'screen drapery' }))
        .toContain('Glazed red sleeve');
      await page.reload();
      await heading(page, 'Glazed red sleeve').first().waitFor();
      await whole(page);

      // Begun anew it is put aside, with a way back.
      await page.getByRole('link', { name: 'Begin another' }).click();
      await button(page, 'Undo').click();
      await heading(page, 'Glazed red sleeve').first().waitFor();
    }));
});
