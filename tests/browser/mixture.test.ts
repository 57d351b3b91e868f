import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from '../tools/axe.ts';
import { DESKTOP, describeBrowser, holdWork, PHONE, Served, Studio } from './open.ts';

const ROWAN = resolve(import.meta.dirname, '../../samples/rowan-branch.jpg');

const bench = (page: Page) => page.locator('section[aria-labelledby="bench-heading"]');
const all = (page: Page) => page.locator('section[aria-labelledby="mix-heading"]');
const opened = (page: Page, summary: string | RegExp) =>
  page.locator('summary').filter({ hasText: summary }).first().click();
const colour = (page: Page, name: string) =>
  page.locator('.wall').getByRole('button', { name, exact: false }).click();
const piles = (page: Page) => bench(page).locator('.piles').innerText();
const settled = (page: Page) =>
  bench(page)
    .getByRole('img', { name: /mixed into one pile/ })
    .first()
    .waitFor();

async function gathered(studio: Studio, url: string, viewport = DESKTOP): Promise<Page> {
  const page = await studio.open(viewport);
  await page.goto(url);
  await page.getByLabel('Choose a photograph').setInputFiles(ROWAN);
  await settled(page);
  return page;
}

describeBrowser('mixtures on the screen of a harmony', () => {
  const served = new Served();
  beforeAll(() => served.start());
  afterAll(() => served.stop());

  test('measures, alternatives, wishes, and what is kept of them', async () => {
    const studio = new Studio();
    try {
      const page = await gathered(studio, served.url);

      // A let-down has a pile of its own, with its ratio.
      await expect.poll(() => piles(page)).toMatch(/1 part of it with (10|20) parts of lead white/);
      await opened(page, 'Measure and mix it');
      await bench(page).getByText('a scale', { exact: true }).click();
      await bench(page).getByRole('columnheader', { name: 'Grams' }).waitFor();
      await bench(page).getByText('ribbons', { exact: true }).click();
      await bench(page).getByRole('columnheader', { name: 'Lengths' }).waitFor();

      const simplest = await piles(page);
      await opened(page, /other ways? to mix it/);
      await bench(page)
        .getByText(/By lamp-light/)
        .first()
        .waitFor();
      await opened(page, 'Its figures');
      expect(await violations(page)).toEqual([]);
      await bench(page)
        .getByRole('button', { name: /Use this mixture/ })
        .last()
        .click();
      await bench(page).getByRole('heading', { name: 'Your choice' }).waitFor();
      const chosen = await piles(page);
      expect(chosen).not.toBe(simplest);
      await page.getByRole('button', { name: /^Undo: another mixture/ }).click();
      await expect.poll(() => piles(page)).toBe(simplest);
      await bench(page)
        .getByRole('button', { name: /Use this mixture/ })
        .last()
        .click();
      await expect.poll(() => piles(page)).toBe(chosen);

      // Kept, and there again.
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await page.reload();
      await settled(page);
      await expect.poll(() => piles(page)).toBe(chosen);

      // What is asked of all mixtures is seen, holds, can contradict itself, and is undone.
      await opened(page, 'What may go into a pile');
      await page.getByLabel('Leave out by danger').selectOption({ label: 'what is toxic' });
      await page.getByText('Asked of all mixtures: without what is toxic.').waitFor();
      await settled(page);
      await expect.poll(() => piles(page)).not.toMatch(/lead white/i);
      await opened(page, 'Pigment by pigment');
      await page.getByLabel('Lead white').selectOption({ label: 'in every pile' });
      await page.getByText(/Lead white is asked for in every pile, and left out as well/).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Undo: lead white in every pile' }).click();
      await settled(page);
      await page.getByRole('button', { name: 'Ask for nothing' }).click();
      await expect.poll(() => page.getByText('Asked of all mixtures').count()).toBe(0);

      // A variant stands beside its origin, with what changes in the pile; then the whole harmony so.
      const rows = page.locator('section[aria-labelledby="variants-heading"]');
      await rows.getByRole('button', { name: 'duller, a little' }).click();
      await rows.getByText(/To the eye: .*In the pile: /).waitFor();
      await rows.getByRole('button', { name: 'See the whole harmony so' }).click();
      await rows.getByText(/^The shelf (makes|goes)/).waitFor();
      await expect.poll(() => rows.getByText(/In the pile: /).count()).toBeGreaterThan(2);
      expect(await violations(page)).toEqual([]);
      const before = await piles(page);
      await rows.getByRole('button', { name: 'Take it for the whole harmony' }).click();
      await settled(page);
      await expect.poll(() => piles(page)).not.toBe(before);
      await page.getByRole('button', { name: 'Undo', exact: true }).click();
      await expect.poll(() => piles(page)).toBe(before);

      // How the colours stand to one another, for those who ask.
      await opened(page, 'How they stand to one another');
      await page.getByText(/is dominant/).waitFor();
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('out of reach, a pile that came out wrong, the fewest pigments, transposing', async () => {
    const studio = new Studio();
    try {
      const page = await gathered(studio, served.url, PHONE);
      await colour(page, 'bright warm red');
      await bench(page)
        .getByText(/than any .* on the shelf/)
        .first()
        .waitFor();
      await opened(page, 'Out of reach: what to keep');
      await bench(page).getByLabel('its lightness').check();
      await page.getByText('Asked of all mixtures: lightness first.').waitFor();
      await page.getByRole('button', { name: 'Undo: lightness first' }).click();
      await settled(page);
      const which = bench(page).getByRole('button', { name: 'Which pigment would reach it?' });
      const stop = bench(page).getByRole('button', { name: 'Stop', exact: true });
      const letGo = await holdWork(page);
      await which.click();
      await stop.click();
      await stop.waitFor({ state: 'detached' });
      await letGo();
      await which.click();
      await bench(page)
        .getByText(/would (reach it|bring it nearer)\./)
        .first()
        .waitFor();
      expect(await violations(page)).toEqual([]);

      await colour(page, 'warm grey');
      await settled(page);
      await opened(page, 'It came out wrong');
      const mend = bench(page).locator('details', { hasText: 'It came out wrong' }).last();
      await mend.getByText('just as promised so far').waitFor();
      await mend.getByRole('button', { name: 'deeper' }).click();
      await mend.getByRole('button', { name: 'deeper' }).click();
      await mend.getByText(/Beside what was promised it is .*darker/).waitFor();
      await mend.getByRole('button', { name: 'What to add' }).click();
      await mend
        .getByText(/^Add .*That is .* of the pile\./)
        .first()
        .waitFor();
      await mend.getByRole('button', { name: 'One touch back' }).click();
      await mend.getByText('The pile or the colour has changed since').waitFor();
      expect(await violations(page)).toEqual([]);

      await opened(page, 'The fewest pigments for all of it');
      await all(page).getByLabel('What they must mix').selectOption('small');
      await all(page).getByRole('button', { name: 'Find the fewest' }).click();
      await all(page)
        .getByText(/colours and variants are out of reach|are enough: /)
        .first()
        .waitFor();
      await all(page).getByLabel('What they must mix').selectOption('none');
      await all(page).getByText('The harmony or the shelf has changed since').waitFor();
      await all(page).getByRole('button', { name: 'Find the fewest' }).click();
      await all(page)
        .getByText(/are enough: /)
        .waitFor();
      await all(page)
        .getByRole('img', { name: /against number of pigments/ })
        .waitFor();
      await opened(page, 'Every number of pigments');
      expect(await violations(page)).toEqual([]);
      await all(page).getByRole('button', { name: 'Mix with these 3 only' }).click();
      await page.getByText(/Asked of all mixtures: only /).waitFor();
      await settled(page);
      await page.getByRole('button', { name: 'Undo: only 3 pigments' }).click();
      await expect.poll(() => page.getByText('Asked of all mixtures').count()).toBe(0);

      await page.getByText('Transposed into reach').click();
      await page.getByText(/^All together: /).waitFor();
      await opened(page, 'What moved, and by how much');
      await page.getByRole('row', { name: /Transposed plain yes kept/ }).waitFor();
      await settled(page);
      await expect
        .poll(() =>
          bench(page)
            .getByText(/than any .* on the shelf/)
            .count(),
        )
        .toBe(0);
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await page.reload();
      await page.getByText(/^All together: /).waitFor();
      await page.getByText('As seen', { exact: true }).click();
      await expect.poll(() => page.getByText(/^All together: /).count()).toBe(0);
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });
});
