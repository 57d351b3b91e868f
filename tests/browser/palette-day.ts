export { violationsInBoth as violations } from '../tools/axe.ts';

import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** A folder for pictures to look at; none unless told. */
export const LOOK = process.env.KINGCUP_LOOK;

/** Nothing is wider than the window. */
export const overflow = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);

export const saved = (page: Page) =>
  expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');
export const heading = (page: Page, name: string | RegExp) =>
  page.getByRole('heading', { name, exact: true });

let shot = 0;
export async function look(page: Page, name: string): Promise<string> {
  const path = join(LOOK ?? '', `${++shot}-${name}.png`);
  if (LOOK !== undefined) await page.screenshot({ path, fullPage: true });
  return path;
}

/** Puts a paint on the studio's own shelf. */
export async function addPaint(
  page: Page,
  url: string,
  pigment: string,
  amount: string,
  lot: string,
) {
  await page.goto(`${url}#/book/shelf/new`);
  await heading(page, 'Add a paint').waitFor();
  await page.getByLabel('Pigment', { exact: true }).selectOption({ label: pigment });
  await page.locator('form').getByText('Own-ground paste', { exact: true }).click();
  await page.getByLabel('Amount', { exact: true }).fill(amount);
  await page.getByLabel('Lot', { exact: true }).fill(lot);
  await page.getByRole('button', { name: 'Put it on the shelf' }).click();
  await heading(page, pigment).waitFor();
}

/** A line of text, typed and left. */
export async function type(page: Page, label: string, text: string): Promise<void> {
  await page.getByLabel(label).fill(text);
  await page.getByLabel(label).blur();
}

/** A pile by hand on the passage that is open. */
export async function handPile(
  page: Page,
  {
    name,
    parts,
  }: { readonly name: string; readonly parts: readonly (readonly [string, string])[] },
) {
  const hand = page.locator('.pal-hand');
  if ((await hand.getAttribute('open')) === null) await hand.getByText('A pile by hand').click();
  await hand.getByLabel('Name').fill(name);
  for (const [at, [count, pigment]] of parts.entries()) {
    if (at > 0) await hand.getByRole('button', { name: 'One more pigment' }).click();
    await hand.getByLabel('Parts').nth(at).fill(count);
    await hand.getByLabel('Pigment', { exact: true }).nth(at).selectOption({ label: pigment });
  }
  await hand.getByRole('button', { name: 'Make this pile' }).click();
  await page.getByRole('article', { name, exact: true }).waitFor();
}
