import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { hasPoppler, readPdf, tellUnread } from '../tools/poppler.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, slowTime, still } from './open.ts';
import { addPaint, handPile, heading, look, overflow, saved, violations } from './palette-day.ts';

/** The words of a drawn palette: what lies along its edge, what below. */
const rows = (page: Page, at = 0) =>
  page
    .locator('.pal-board svg title')
    .nth(at)
    .textContent()
    .then((words) => words?.split('; ') ?? []);
const pile = (page: Page, name: string, at = 0) =>
  page.locator('.pal-board').nth(at).getByRole('button', { name, exact: true });
/** Takes back what a notice tells of: that of the step before may still stand there. */
const undo = (page: Page, notice: string) =>
  page.locator('.notice', { hasText: notice }).getByRole('button', { name: 'Undo' }).click();
interface Point {
  readonly x: number;
  readonly y: number;
}
/** Middles of two things that are both in sight. */
async function middles(page: Page, ...both: readonly Locator[]) {
  for (const one of both) await one.scrollIntoViewIfNeeded();
  await still(page);
  const boxes = await Promise.all(both.map((one) => one.boundingBox()));
  return boxes.map((box) => ({ x: box!.x + box!.width / 2, y: box!.y + box!.height / 2 }));
}

async function dragTo(page: Page, from: Locator, to: Locator): Promise<void> {
  const [a, b] = (await middles(page, from, to)) as [Point, Point];
  await page.mouse.move(a.x, a.y);
  await page.mouse.down();
  await page.mouse.move((a.x + b.x) / 2, (a.y + b.y) / 2, { steps: 4 });
  await page.mouse.move(b.x, b.y, { steps: 4 });
  await page.mouse.up();
}

/** The same with one finger. */
async function fingerTo(page: Page, from: Locator, to: Locator): Promise<void> {
  const client = await page.context().newCDPSession(page);
  const [a, b] = (await middles(page, from, to)) as [Point, Point];
  const touch = (
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    points: { x: number; y: number }[],
  ) => client.send('Input.dispatchTouchEvent', { type, touchPoints: points });
  await touch('touchStart', [a]);
  for (const part of [0.3, 0.6, 1])
    await touch('touchMove', [{ x: a.x + (b.x - a.x) * part, y: a.y + (b.y - a.y) * part }]);
  await touch('touchEnd', []);
}

tellUnread('what is printed');

describeBrowser('palettes of a day, laid by hand', () => {
  const served = new Served();
  beforeAll(() => served.start());
  afterAll(() => served.stop());

  /** A passage by hand with its piles, on a palette of its own. */
  async function passageBy(page: Page, name: string, piles: Parameters<typeof handPile>[1][]) {
    const add = page.getByText('Add a passage', { exact: true });
    if ((await add.count()) > 0) await add.click();
    await page.getByRole('button', { name: 'A passage by hand' }).click();
    await heading(page, 'New passage').waitFor();
    await page.getByLabel('Name').first().fill(name);
    await page.getByLabel('Name').first().blur();
    await heading(page, name).waitFor();
    for (const one of piles) await handPile(page, one);
    await saved(page);
    await page.getByRole('link', { name: 'The day’s palette' }).first().click();
  }
  const SLEEVE = [
    {
      name: 'light',
      parts: [
        ['4', 'Lead white'],
        ['1', 'Yellow ochre'],
      ],
    },
    {
      name: 'tone',
      parts: [
        ['2', 'Yellow ochre'],
        ['1', 'Lead white'],
      ],
    },
    {
      name: 'dark',
      parts: [
        ['2', 'Raw umber'],
        ['1', 'Yellow ochre'],
      ],
    },
  ] as const;

  test('seats set once, piles moved by hand, three palettes, one page each', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await slowTime(page);
      await page.goto(`${served.url}#/palette`);
      await passageBy(page, 'Sleeve', [...SLEEVE]);
      await expect.poll(async () => (await rows(page))[2]).toMatch(/light, tone and dark/);
      const before = await rows(page);

      // By mouse, at once; an undo; by the mouse again, and restored.
      await dragTo(page, pile(page, 'dark'), pile(page, 'light'));
      await expect.poll(() => rows(page)).not.toEqual(before);
      expect((await rows(page))[2]).toMatch(/dark, light and tone/);
      await undo(page, 'moved, on this palette alone');
      await expect.poll(() => rows(page)).toEqual(before);
      await dragTo(page, pile(page, 'Raw umber'), pile(page, 'Yellow ochre'));
      await expect
        .poll(async () => (await rows(page))[1])
        .toMatch(/Lead white, Raw umber and Yellow ochre/);
      // The white stays where it is.
      await dragTo(page, pile(page, 'Yellow ochre'), pile(page, 'Lead white'));
      expect((await rows(page))[1]).toMatch(/Lead white, Raw umber and Yellow ochre/);
      await page.getByRole('button', { name: 'Restore the studio’s order' }).click();
      await expect.poll(() => rows(page)).toEqual(before);

      // The studio's own order, by button, by key and by dragging; every palette follows.
      await page.getByText('The studio’s palette and rules').click();
      await page.getByRole('link', { name: 'Set the seat order' }).click();
      await heading(page, 'The studio’s seat order').waitFor();
      await page.getByText('This is the proposed order, light to dark.').waitFor();
      const seats = () => page.locator('.pal-seats > li').allInnerTexts();
      const proposed = await seats();
      expect(proposed[0]).toMatch(/^Lead white.*beside the thumb hole/s);
      const up = page.getByRole('button', { name: 'Move Raw umber nearer the thumb hole' });
      await up.focus();
      await page.keyboard.press('Enter');
      await expect.poll(seats).not.toEqual(proposed);
      // The focus went with it: the same key moves it on.
      const once = await seats();
      await page.keyboard.press('Enter');
      await expect.poll(seats).not.toEqual(once);
      expect(await violations(page)).toEqual([]);
      await look(page, 'seats');
      await dragTo(
        page,
        page.locator('[data-seat="raw_umber"] .pal-grip'),
        page.locator('[data-seat="yellow_ochre"] .pal-grip'),
      );
      const at = (texts: string[], name: string) => texts.findIndex((one) => one.startsWith(name));
      await expect
        .poll(async () => at(await seats(), 'Raw umber') < at(await seats(), 'Yellow ochre'))
        .toBe(true);
      await saved(page);
      await page.reload();
      await heading(page, 'The studio’s seat order').waitFor();
      await expect
        .poll(async () => at(await seats(), 'Raw umber') < at(await seats(), 'Yellow ochre'))
        .toBe(true);
      await page.getByRole('link', { name: 'The day’s palette' }).click();
      await expect
        .poll(async () => (await rows(page))[1])
        .toMatch(/Lead white, Raw umber and Yellow ochre/);

      // A second and a third palette, each for a passage of its own; a fourth finds no place.
      await passageBy(page, 'Sky', [
        {
          name: 'blue',
          parts: [
            ['6', 'Lead white'],
            ['1', 'Ultramarine'],
          ],
        },
      ]);
      await passageBy(page, 'Earth', [
        {
          name: 'mud',
          parts: [
            ['1', 'Raw umber'],
            ['1', 'Bone black'],
          ],
        },
      ]);
      await expect.poll(() => page.locator('.pal-board').count()).toBe(3);
      expect((await rows(page, 1))[1]).toMatch(/Lead white and Ultramarine/);
      await page.getByText('Add a passage', { exact: true }).click();
      expect(await page.getByLabel('Lay it on').locator('option').allInnerTexts()).toEqual([
        'Palette 1',
        'Palette 2',
        'Palette 3',
      ]);
      expect(await violations(page)).toEqual([]);
      await look(page, 'three');

      // Printed: the browser is asked once, and each palette has one page.
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await expect.poll(() => page.locator('.sheet').count()).toBe(3);
      await page.evaluate(() => {
        globalThis.print = () => {
          document.body.dataset.printed = `${Number(document.body.dataset.printed ?? 0) + 1}`;
        };
      });
      await page.getByRole('button', { name: 'Print, or keep as PDF' }).click();
      await expect.poll(() => page.evaluate(() => document.body.dataset.printed)).toBe('1');
      if (hasPoppler)
        for (const format of ['A4', 'Letter'] as const)
          expect(readPdf(await page.pdf({ format, printBackground: false }))?.pages).toBe(3);

      // Everything has a way back: a pile, a passage off the day, a passage in the bin.
      await page.getByRole('link', { name: 'The day’s palette' }).click();
      await page.getByRole('link', { name: 'Sky', exact: true }).click();
      await page.getByRole('button', { name: 'Remove this pile: blue' }).click();
      await page.getByText('No pile yet.').waitFor();
      await undo(page, 'The pile “blue” is removed');
      await page.getByRole('article', { name: 'blue' }).waitFor();
      await page.getByRole('button', { name: 'Take it off the day' }).click();
      await expect.poll(() => page.locator('.pal-board').count()).toBe(2);
      await undo(page, 'is off this day');
      await expect.poll(() => page.locator('.pal-board').count()).toBe(3);
      await page.getByRole('link', { name: 'Sky', exact: true }).click();
      await page.getByRole('button', { name: 'Delete this passage' }).click();
      await expect.poll(() => page.locator('.pal-board').count()).toBe(2);
      await undo(page, 'is in the bin');
      await expect.poll(() => page.locator('.pal-board').count()).toBe(3);
      // Two passages share a palette, and part again.
      await page.getByRole('link', { name: 'Earth', exact: true }).click();
      await page.getByLabel('Lies on').selectOption({ label: 'Palette 2' });
      await expect.poll(() => page.getByLabel('Lies on').locator('option').count()).toBe(3);
      await undo(page, 'lies on another palette');
      await page.getByRole('link', { name: 'The day’s palette' }).first().click();
      await expect.poll(() => page.locator('.pal-board').count()).toBe(3);
    }));

  test('by finger on a phone: a pile, a seat; the sheet is read without scrolling sideways', () =>
    inStudio(PHONE, 'light', async (page) => {
      await slowTime(page);
      await addPaint(page, served.url, 'Lead white', '200', '3');
      await addPaint(page, served.url, 'Yellow ochre', '150', '7');
      await addPaint(page, served.url, 'Raw umber', '60', '2');
      await page.goto(`${served.url}#/palette`);
      await passageBy(page, 'Sleeve', [...SLEEVE]);
      await expect.poll(async () => (await rows(page))[2]).toMatch(/light, tone and dark/);
      const before = await rows(page);
      // Not chosen yet: the finger scrolls, and nothing moves.
      await pile(page, 'dark').tap();
      await page.locator('.pal-chosen h3').waitFor();
      await fingerTo(page, pile(page, 'dark'), pile(page, 'light'));
      await expect.poll(async () => (await rows(page))[2]).toMatch(/dark, light and tone/);
      await page.getByRole('button', { name: 'Restore the studio’s order' }).click();
      await expect.poll(() => rows(page)).toEqual(before);

      await page.goto(`${served.url}#/palette/seats`);
      await heading(page, 'The studio’s seat order').waitFor();
      await fingerTo(
        page,
        page.locator('[data-seat^="raw_umber"] .pal-grip'),
        page.locator('[data-seat^="yellow_ochre"] .pal-grip'),
      );
      await expect
        .poll(async () => (await page.locator('.pal-seats > li').allInnerTexts())[1])
        .toMatch(/^Raw umber/);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'seats-phone');
      await undo(page, 'another seat');
      await expect
        .poll(async () => (await page.locator('.pal-seats > li').allInnerTexts())[1])
        .toMatch(/^Yellow ochre/);

      await page.goto(`${served.url}#/palette/sheet`);
      await page.locator('.sheet').waitFor();
      const wide = await page.evaluate(() =>
        [...document.querySelectorAll('.pal-paper, .pal-paper *')]
          .filter((one) => one.getBoundingClientRect().right > innerWidth)
          .map((one) => one.outerHTML.slice(0, 80)),
      );
      expect(wide).toEqual([]);
      const small = await page.evaluate(() =>
        Math.min(
          ...[...document.querySelectorAll<HTMLElement>('.sheet :is(td, li, p, h3)')].map((one) =>
            Number.parseFloat(getComputedStyle(one).fontSize),
          ),
        ),
      );
      expect(small).toBeGreaterThan(13);
      await look(page, 'sheet-phone');
    }));
});
