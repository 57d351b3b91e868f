import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import { onDisk } from './disk.ts';
import { DESKTOP, describeBrowser, inStudio, Served } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

describeBrowser('what was typed when the page closed', () => {
  const served = new Served();
  beforeAll(() => served.start());
  afterAll(() => served.stop());

  /** Types, and loads the page anew before anything had the time to be saved. */
  async function typeAndReload(page: Page, label: string, text: string): Promise<void> {
    const field = page.getByLabel(label, { exact: true }).last();
    await field.selectText();
    await page.keyboard.insertText(text);
    await page.reload();
  }
  const textIn = (page: Page, label: string) =>
    expect.poll(() => page.getByLabel(label, { exact: true }).last().inputValue());

  test('is there after a reload: of a harmony, a passage, a drapery', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.goto(served.url);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      const keep = page.getByRole('button', { name: 'Keep this harmony' });
      await keep.waitFor();

      // Words and a variant of a harmony that is not in the book yet.
      const folds = page.getByRole('list', { name: 'From cool to warm' });
      await folds.getByRole('button', { name: /cooler, clearly/ }).click();
      await page.getByRole('button', { name: 'Take this variant' }).click();
      await typeAndReload(page, 'Your words', 'The grey was warmer');
      await textIn(page, 'Your words').toBe('The grey was warmer');
      await page.getByLabel('Name', { exact: true }).last().fill('Jay');
      await page
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor();
      await keep.click();
      await page.getByText('This harmony is in the book').waitFor();
      await expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');
      const id = await page.evaluate(() => location.hash.split('/')[2]!);
      const { body } = (await page.evaluate(onDisk, {
        table: 'records',
        key: id,
      })) as Entry<'harmony'>;
      const { colours } = body;
      expect(colours[0]!.taken).toEqual([{ way: 'cooler', amount: 'middle' }]);

      // Of one that is.
      await typeAndReload(page, 'Name', 'Jay on moss');
      await page.getByRole('heading', { name: 'Jay on moss' }).waitFor();
      await textIn(page, 'Name').toBe('Jay on moss');
      await textIn(page, 'Your words').toBe('The grey was warmer');
      await page.getByRole('link', { name: 'Book', exact: true }).click();
      await page.locator('.row-name').getByText('Jay on moss').waitFor();

      // A passage's field keeps its text when it is left: here the page is closed with the field.
      await page.getByRole('link', { name: 'Palette', exact: true }).click();
      await page.getByRole('button', { name: /Jay on moss harmony/ }).click();
      await page.getByRole('heading', { name: 'Jay on moss', exact: true }).waitFor();
      await expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');
      await typeAndReload(page, 'Painting', 'The mill');
      await textIn(page, 'Painting').toBe('The mill');

      // The bench of draperies, then changes of one that is kept.
      await page.goto(`${served.url}#/drapery`);
      await page.locator('main button.drapery-take').getByText('Glazed red sleeve').click();
      await page.getByRole('heading', { name: 'Glazed red sleeve' }).first().waitFor();
      await typeAndReload(page, 'Name of the drapery', 'Sleeve by the window');
      await textIn(page, 'Name of the drapery').toBe('Sleeve by the window');
      await page.getByRole('button', { name: 'Keep this drapery' }).click();
      await page.getByText('This drapery is in the book.').waitFor();
      await typeAndReload(page, 'Name of the drapery', 'Sleeve by the door');
      await textIn(page, 'Name of the drapery').toBe('Sleeve by the door');
      await page.getByRole('button', { name: 'Keep the changes' }).waitFor();
    }));
});
