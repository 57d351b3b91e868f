import { resolve } from 'node:path';
import type { Locator, Page } from 'playwright-core';
import { still } from './studio.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

/** What is done at a place that the tour has come to. */
export type Stop = (place: string) => Promise<void>;

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: true }).first();
const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { name, exact: true }).first();

/** Opens everything that is folded, outermost first. */
export async function unfold(page: Page, within = 'main'): Promise<void> {
  for (let round = 0; round < 4; round++) {
    const shut = await page.evaluate((root) => {
      const all = [...document.querySelectorAll<HTMLDetailsElement>(`${root} details:not([open])`)];
      for (const each of all) each.open = true;
      return all.length;
    }, within);
    if (shut === 0) return;
    await still(page);
  }
}

/** Every place of a new book, with nothing in it yet. */
export async function emptyPlaces(page: Page, url: string, stop: Stop): Promise<void> {
  for (const [address, name, words] of [
    ['walk', 'walk, empty', 'What did you see?'],
    ['harmony', 'harmony, empty', 'Harmony'],
    ['drapery', 'drapery, empty', /./],
    ['palette', 'palette, empty', /./],
    ['book', 'book, empty', /./],
    ['book/guide', 'guide', 'How Kingcup works'],
    ['book/shelf', 'shelf, empty', 'Shelf'],
    ['book/shelf/new', 'shelf, adding', 'Add a paint'],
    ['book/shelf/swatches', 'own paints, empty', 'Your own paints'],
  ] as const) {
    await page.goto(`${url}#/${address}`);
    await heading(page, words).waitFor();
    await still(page);
    await stop(name);
  }
}

/** From a photograph to a kept harmony. */
export async function toHarmony(page: Page, url: string, stop: Stop): Promise<void> {
  await page.goto(`${url}#/walk`);
  await page.getByLabel('Choose a photograph').setInputFiles(JAY);
  await page
    .getByRole('img', { name: /mixed into one pile/ })
    .first()
    .waitFor();
  await stop('harmony, gathered');
  await page
    .getByRole('list', { name: 'From cool to warm' })
    .getByRole('button', { name: /warmer, clearly/ })
    .click();
  await page
    .locator('.variant-preview')
    .getByRole('img', { name: /mixed into one pile/ })
    .last()
    .waitFor();
  await stop('harmony, a variant tried');
  await button(page, 'Take this variant').click();
  await page.getByLabel('Name', { exact: true }).fill('By the mill stream');
  await button(page, 'Keep this harmony').click();
  await page.getByText('This harmony is in the book').waitFor();
  await stop('harmony, kept');
  await button(page, 'Hold the screen to the pile').click();
  await heading(page, 'Hold it against the dry pile').waitFor();
  await stop('held against a pile');
  await page.keyboard.press('Escape');
  await heading(page, 'By the mill stream').waitFor();
}

/** The kept harmony among the entries of the book. */
export const keptInBook = (page: Page): Locator =>
  page
    .getByRole('listitem')
    .filter({ hasText: /Harmony ·/ })
    .getByRole('link', { name: 'By the mill stream', exact: true })
    .first();

/** On from there to a drapery, its formula, a passage, the palette, the sheet and the book. */
export async function onward(page: Page, stop: Stop): Promise<void> {
  await button(page, 'Make a drapery of it').click();
  await heading(page, 'From the highlight to the deepest fold').waitFor();
  const keep = button(page, 'Keep it as a formula');
  await page.waitForFunction(() =>
    [...document.querySelectorAll('button')].some(
      (each) => each.textContent === 'Keep it as a formula' && !each.disabled,
    ),
  );
  await stop('drapery');
  await page.getByLabel('Name of the drapery').fill('Cloths of the jay');
  await button(page, 'Keep this drapery').click();
  await page.getByText('This drapery is in the book.').waitFor();
  await keep.click();
  await page.getByText(/The formula .* is in the book/).waitFor();

  await page.getByRole('link', { name: 'Palette', exact: true }).click();
  await stop('palette, nothing laid');
  await button(page, /By the mill stream harmony/).click();
  await page.getByRole('article').first().getByLabel('Square centimetres').fill('250');
  await page.getByRole('article').first().getByLabel('Square centimetres').blur();
  await stop('palette, a passage');
  // Read, and put away: on a phone it stands over what is touched next. One that was read long ago is gone.
  const close = page.locator('.notices').getByRole('button', { name: 'Close' }).first();
  if (await close.isVisible()) await close.click();
  await page.getByRole('link', { name: 'The day’s palette' }).first().click();
  await page
    .getByRole('img', { name: /palette with the thumb hole/ })
    .first()
    .waitFor();
  await page.locator('.pal-board button').last().click();
  await page.locator('.pal-chosen h3').waitFor();
  await stop('palette, the day');
  await page.getByRole('link', { name: 'Morning sheet' }).click();
  await page.locator('.sheet').first().waitFor();
  await stop('palette, the sheet');

  await page.getByRole('link', { name: 'Book', exact: true }).click();
  await page.getByRole('link', { name: 'By the mill stream', exact: true }).first().waitFor();
  await still(page);
  await stop('book');
  await keptInBook(page).click();
  await page.getByRole('link', { name: 'Open in Harmony' }).waitFor();
  await stop('book, an entry');
  await page.goto(`${page.url().split('#')[0]}#/book/shelf/vermilion`);
  await heading(page, 'Vermilion').waitFor();
  await stop('shelf, a paint');
}
