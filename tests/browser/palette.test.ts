import { writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import { hasPoppler, readPdf, tellUnread } from '../tools/poppler.ts';
import { onDisk } from './disk.ts';
import { DESKTOP, describeBrowser, PHONE, Served, Studio, wakeAt } from './open.ts';
import {
  addPaint,
  handPile,
  heading,
  LOOK,
  look,
  overflow,
  saved,
  type,
  violations,
} from './palette-day.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');
/** The day after an ISO day. */
const next = (day: string) => new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10);

/** Grams in stock by pigment, as they are on disk. */
const stockOf = async (page: Page): Promise<Record<string, number>> => {
  const shelf = (await page.evaluate(onDisk, {
    table: 'records',
    key: 'studio-shelf',
  })) as Entry<'shelf'>;
  return Object.fromEntries(
    shelf.body.stock!.entries.map(({ pigment, amount }) => [pigment, amount!]),
  );
};

tellUnread('what is printed');

describeBrowser('from a harmony or a drapery in the book to a printed morning sheet', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  async function keepHarmony(page: Page): Promise<void> {
    await page.goto(served.url);
    await page.getByLabel('Choose a photograph').setInputFiles(JAY);
    await page
      .getByRole('img', { name: /mixed into one pile/ })
      .first()
      .waitFor();
    await page.getByLabel('Name').last().fill('Jay');
    await page.getByRole('button', { name: 'Keep this harmony' }).click();
    await page.getByText('This harmony is in the book').waitFor();
    await saved(page);
  }

  /** The cloths of the harmony that is open: two garments and a trim, each of six folds. */
  async function keepDrapery(page: Page): Promise<void> {
    await page.getByRole('button', { name: 'Make a drapery of it' }).click();
    await heading(page, 'From the highlight to the deepest fold').waitFor();
    await expect
      .poll(() => page.getByRole('button', { name: 'Keep it as a formula' }).isEnabled())
      .toBe(true);
    await page.getByLabel('Name of the drapery').fill('Jay');
    await page.getByRole('button', { name: 'Keep this drapery' }).click();
    await page.getByText('This drapery is in the book.').waitFor();
    await saved(page);
  }

  test.each([
    ['a drapery, on a desktop', DESKTOP, 'drapery', 3],
    ['a harmony, on a phone', PHONE, 'harmony', 1],
  ] as const)('%s', async (_, viewport, kind, boards) => {
    const studio = new Studio();
    try {
      const page = await studio.open(viewport);
      await page.goto(`${served.url}#/palette`);
      await page.getByText('Nothing is laid out for this day').waitFor();
      await page.getByText('The book has no harmony').waitFor();
      if (kind === 'harmony') expect(await violations(page)).toEqual([]);
      await look(page, 'empty');
      await keepHarmony(page);
      if (kind === 'drapery') await keepDrapery(page);
      await page.getByRole('link', { name: 'Palette', exact: true }).click();
      await page.getByRole('button', { name: `Jay ${kind}` }).click();
      await heading(page, 'Jay').waitFor();
      const pile = page.getByRole('article').first();
      const first = (await pile.getAttribute('aria-label'))!;
      await pile.getByLabel('Square centimetres').fill('0');
      await pile.getByLabel('Square centimetres').blur();
      await pile.getByText('Write a number above 0.').waitFor();
      await pile.getByLabel('Square centimetres').fill('250');
      await pile.getByLabel('Square centimetres').blur();
      await page.getByLabel('Canvas width, cm').fill('50,8');
      await page.getByLabel('Canvas width, cm').blur();
      await page.getByLabel('Canvas height, cm').fill('25.4');
      await page.getByLabel('Canvas height, cm').blur();
      await page.getByText('20.0 × 10.0 inches').waitFor();
      // All at once, and back.
      const area = pile.getByLabel('Square centimetres');
      await page.getByText('All piles at once').click();
      await page.getByLabel('All of them together cover, cm²').fill('1800');
      await page.getByRole('button', { name: 'Set all piles' }).click();
      await expect.poll(() => area.inputValue()).not.toBe('250');
      await page.locator('.notices').getByRole('button', { name: 'Undo' }).click();
      await expect.poll(() => area.inputValue()).toBe('250');
      await saved(page);
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'passage');
      await page.getByRole('link', { name: 'The day’s palette' }).first().click();
      await page
        .getByRole('img', { name: /palette with the thumb hole/ })
        .first()
        .waitFor();
      // Eighteen folds are more than one palette carries: it says so, and lays three.
      await expect.poll(() => page.locator('.pal-board').count()).toBe(boards);
      await expect
        .poll(() => page.getByText(/is more than one palette carries/).count())
        .toBe(boards > 1 ? 1 : 0);
      await page.getByRole('button', { name: first, exact: true }).click();
      await page.locator('.pal-chosen h3').waitFor();
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'day');
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await page.locator('.sheet').first().waitFor();
      await expect.poll(() => page.locator('.sheet').count()).toBe(boards);
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'sheet');
      const pdf = await page.pdf({ format: 'A4', printBackground: false });
      if (LOOK) writeFileSync(join(LOOK, `${viewport.width}.pdf`), pdf);
      if (hasPoppler) expect(readPdf(pdf)?.pages).toBe(boards);
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('a stock that shrinks, an undo, a leftover offered next morning', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await wakeAt(studio, '2026-05-12T08:00');
      await addPaint(page, served.url, 'Lead white', '200', '3');
      await addPaint(page, served.url, 'Yellow ochre', '150', '7');
      await addPaint(page, served.url, 'Ultramarine', '1', '1');
      await page.goto(`${served.url}#/palette`);
      const day = await page.getByLabel('The day').inputValue();

      // A passage by hand: a pile of two pigments, its parts, its area as a share of the canvas.
      await page.getByRole('button', { name: 'A passage by hand' }).click();
      await heading(page, 'New passage').waitFor();
      await page.getByLabel('Name').first().fill('Sleeve');
      await page.getByLabel('Name').first().blur();
      await heading(page, 'Sleeve').waitFor();
      await handPile(page, {
        name: 'half-tone',
        parts: [
          ['3', 'Lead white'],
          ['1', 'Yellow ochre'],
        ],
      });
      const tone = page.getByRole('article', { name: 'half-tone' });
      await tone.getByLabel('It covers').selectOption('share');
      // A share of a canvas without a size is refused in words, and the rest stays.
      await page.getByText(/does not say how large the canvas is/).waitFor();
      await type(page, 'Canvas width, cm', '60');
      await type(page, 'Canvas height, cm', '45');
      await expect.poll(() => page.getByText(/does not say how large/).count()).toBe(0);
      await handPile(page, {
        name: 'shadow',
        parts: [
          ['1', 'Ultramarine'],
          ['2', 'Yellow ochre'],
        ],
      });
      await saved(page);
      await page.getByRole('link', { name: 'The day’s palette' }).first().click();
      await page.getByRole('img', { name: /palette with the thumb hole/ }).waitFor();

      // About 0.8 cm3 of ultramarine, seat and all, is more than the gram that stands there.
      await heading(page, 'What the shelf lacks').waitFor();
      await page.getByText(/Ultramarine: the shelf lacks/).waitFor();

      // The studio's palette, by keyboard: a pile is moved, then restored.
      const order = () =>
        page
          .locator('.pal-board svg title')
          .textContent()
          .then((words) => words?.split('; ').at(-1));
      const before = await order();
      const shadow = page.locator('.pal-board').getByRole('button', { name: 'shadow' });
      await shadow.focus();
      await page.keyboard.press('Enter');
      await page.locator('.pal-chosen h3').waitFor();
      await page.keyboard.press('ArrowLeft');
      await expect.poll(order).not.toBe(before);
      await page.getByRole('button', { name: 'Restore the studio’s order' }).click();
      await expect.poll(order).toBe(before);
      await page.getByText('The studio’s palette and rules').click();
      await page.getByLabel('Shape').selectOption('square');
      await page.getByLabel('Held in the').selectOption('right');
      await page
        .getByRole('img', { name: /square-cornered palette with the thumb hole at the right/ })
        .waitFor();
      await type(page, 'Who works here today', 'Ines, Bram');

      // Each acknowledges the lot of lead white once.
      await page.getByRole('button', { name: /Ines has read Lead white, lot 3/ }).click();
      await page.getByText(/Ines, Lead white, lot 3: read/).waitFor();
      await page.getByRole('button', { name: /Bram has read Lead white, lot 3/ }).waitFor();

      // Pupils: nothing toxic is left.
      const whites = page.locator('.pal-board').getByRole('button', { name: 'Lead white' });
      await page.getByLabel('Pupils under age or pregnant people here').check();
      await expect.poll(() => whites.count()).toBe(0);
      await page.getByLabel('Pupils under age or pregnant people here').uncheck();
      await whites.waitFor();

      // Fewest.
      await page.getByRole('button', { name: 'Look for the fewest' }).click();
      await page.locator('.pal-fewest li').first().waitFor();
      expect(await violations(page)).toEqual([]);
      await look(page, 'whole-day');

      // Prepared: the stock shrinks by what the sheet says; undo brings it back; again, and it stays.
      const full = await stockOf(page);
      const prepare = page.getByRole('button', { name: 'Prepared: take it from the stock' });
      await prepare.click();
      await page.getByText('It is prepared; what it took has left the stock.').waitFor();
      const less = await stockOf(page);
      expect(less.lead_white!).toBeLessThan(full.lead_white!);
      expect(less.yellow_ochre!).toBeLessThan(full.yellow_ochre!);
      expect(less.ultramarine!).toBe(0);
      await page.locator('.notices').getByRole('button', { name: 'Undo' }).click();
      await prepare.waitFor();
      const back = await stockOf(page);
      for (const [pigment, grams] of Object.entries(full))
        expect(back[pigment]).toBeCloseTo(grams, 9);
      await prepare.click();
      await expect.poll(() => stockOf(page)).toEqual(less);

      // The sheet, printed: one page, its text selectable, with what was acknowledged.
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await page.locator('.sheet').waitFor();
      for (const format of ['A4', 'Letter'] as const) {
        const printed = readPdf(await page.pdf({ format, printBackground: false }));
        if (LOOK) writeFileSync(join(LOOK, `printed-${format}.pdf`), await page.pdf({ format }));
        if (printed) {
          const { pages, text } = printed;
          expect(pages).toBe(1);
          for (const words of ['half-tone', 'shadow', 'Ines', 'Oily rags', 'Yellow ochre'])
            expect(text).toContain(words);
          expect(text).not.toContain('Print, or keep as PDF');
        }
      }

      // The day's end: what was laid is a coat, what is left is offered first next morning.
      await page.getByRole('link', { name: 'The day’s palette' }).click();
      await page.getByText('At the day’s end').click();
      await page.getByRole('button', { name: 'Note what is left of “half-tone”' }).click();
      await page.getByText('What is left of “half-tone” is offered first').waitFor();
      await page.getByRole('button', { name: '“half-tone” was laid today' }).click();
      await page.getByText('It is a coat of today.').waitFor();
      await saved(page);

      await page.reload();
      await page.getByLabel('The day').fill(next(day));
      await page.getByLabel('The day').blur();
      await heading(page, 'Use first: left from before').waitFor();
      await page.getByText(/“half-tone”, .* under film since/).waitFor();
      await page.getByRole('button', { name: 'Sleeve', exact: true }).click();
      await page.getByText(/It serves “half-tone”\./).waitFor();
      await page.getByText(/Sleeve: the body colour of .* is /).waitFor();
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await page.locator('.sheet').getByText('Use first').waitFor();
      await page.getByRole('link', { name: 'The day’s palette' }).click();
      expect(await violations(page)).toEqual([]);
      await look(page, 'next-morning');
      await page.getByRole('button', { name: 'It has a skin: half-tone' }).click();
      await page.getByText(/has a skin: discard it/).waitFor();
      await saved(page);
      await page.reload();
      await page.getByLabel('The day').fill(next(day));
      await page.getByLabel('The day').blur();
      await page.getByText(/has a skin: discard it/).waitFor();
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });
});
