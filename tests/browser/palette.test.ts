import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import { DESKTOP, describeBrowser, PHONE, Served, Studio } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');
const hasPoppler = spawnSync('which', ['pdftotext']).status === 0;
/** A folder for pictures to look at; none unless told. */
const LOOK = process.env.KINGCUP_LOOK;

/** What axe finds wrong, WCAG 2.2 A and AA, in light and dark. */
async function violations(page: Page): Promise<string[]> {
  const all: string[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    const { violations: found } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    all.push(
      ...found.map(
        ({ id, nodes }) => `${colorScheme} ${id}: ${nodes.map((node) => node.html).join(' | ')}`,
      ),
    );
  }
  await page.emulateMedia({ colorScheme: 'light' });
  return all;
}

/** Nothing is wider than the window. */
const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

const saved = (page: Page) =>
  expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');
const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { name, exact: true });

let shot = 0;
async function look(page: Page, name: string): Promise<void> {
  if (LOOK === undefined) return;
  await page.screenshot({ path: join(LOOK, `${++shot}-${name}.png`), fullPage: true });
}

/** The day after an ISO day. */
const next = (day: string) =>
  new Date(Date.parse(day) + 86_400_000).toISOString().slice(0, 10);

/** What the starter shelf, taken as the studio's own, holds of every paint: all the same, weighed. */
async function stock(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/book/shelf/new`);
  await heading(page, 'Shelf').waitFor();
}

describeBrowser('from a harmony in the book to a printed morning sheet', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  async function keepHarmony(page: Page): Promise<void> {
    await page.goto(served.url);
    await page.getByLabel('Choose a photograph').setInputFiles(JAY);
    await page.getByRole('img', { name: /mixed into one pile/ }).waitFor();
    await page.getByLabel('Name').last().fill('Jay');
    await page.getByRole('button', { name: 'Keep this harmony' }).click();
    await page.getByText('This harmony is in the book').waitFor();
    await saved(page);
  }

  test.each([
    ['a desktop', DESKTOP],
    ['a phone', PHONE],
  ])('on %s', async (_, viewport) => {
    const studio = new Studio();
    try {
      const page = await studio.open(viewport);
      await page.goto(`${served.url}#/palette`);
      await page.getByText('Nothing is laid out for this day').waitFor();
      await page.getByText('The book has no harmony').waitFor();
      expect(await violations(page)).toEqual([]);
      await look(page, 'empty');
      await keepHarmony(page);
      await page.getByRole('link', { name: 'Palette', exact: true }).click();
      await page.getByRole('button', { name: /Jay harmony/ }).click();
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
      await saved(page);
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'passage');
      await page.getByRole('link', { name: 'The day’s palette' }).first().click();
      await page.getByRole('img', { name: /palette with the thumb hole/ }).waitFor();
      await page.getByRole('button', { name: first, exact: true }).click();
      await page.locator('.pal-chosen h3').waitFor();
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'day');
      await page.getByRole('link', { name: 'Morning sheet' }).click();
      await page.locator('.sheet').waitFor();
      expect(await violations(page)).toEqual([]);
      expect(await overflow(page)).toBeLessThanOrEqual(0);
      await look(page, 'sheet');
      const pdf = await page.pdf({ format: 'A4', printBackground: false });
      if (LOOK) writeFileSync(join(LOOK, `${shot}.pdf`), pdf);
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });
});
