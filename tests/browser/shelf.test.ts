import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import type { HarmonyBody } from '../../src/book/schema/harmony.ts';
import { violationsInBoth as violations } from '../tools/axe.ts';
import { entriesOnDisk } from './disk.ts';
import {
  DESKTOP,
  describeBrowser,
  inStudio,
  PHONE,
  Served,
  Studio,
  slowTime,
  wasTold,
} from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });
const line = (page: Page, words: RegExp) =>
  page.getByRole('listitem').getByRole('link', { name: words });
const saved = (page: Page) =>
  expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');

/**
 * Everything is mixed and saved, and what waited in the page's own timers until something had come to rest had its
 * turn: one that is set now comes after them, however slow the page is.
 */
async function atRest(page: Page): Promise<void> {
  await expect.poll(() => page.locator('progress').count()).toBe(0);
  await saved(page);
  await page.evaluate(() => new Promise((done) => setTimeout(done, 1500)));
  await saved(page);
}

async function openShelf(page: Page, url: string): Promise<void> {
  await page.goto(`${url}#/book`);
  await page.getByRole('link', { name: 'Shelf', exact: true }).click();
  await heading(page, 'Shelf').waitFor();
}

interface Typed {
  readonly pigment: string;
  readonly form?: 'Tube' | 'Own-ground paste' | 'Dry powder';
  readonly amount?: string;
  readonly lot?: string;
}

async function fill(page: Page, { pigment, form = 'Tube', amount = '', lot = '' }: Typed) {
  await page.getByLabel('Pigment', { exact: true }).selectOption({ label: pigment });
  await page.locator('form').getByText(form, { exact: true }).click();
  await page.getByLabel('Amount', { exact: true }).fill(amount);
  await page.getByLabel('Lot', { exact: true }).fill(lot);
}

/** Adds a paint and waits until its page is open. */
async function addPaint(page: Page, url: string, paint: Typed): Promise<void> {
  await page.goto(`${url}#/book/shelf/new`);
  await heading(page, 'Add a paint').waitFor();
  await fill(page, paint);
  await page.getByRole('button', { name: 'Put it on the shelf' }).click();
  await heading(page, paint.pigment).waitFor();
}

/** Gathers the sample and waits for its mixture; answers the words of the recipe on the bench. */
async function recipeOfJay(page: Page, url: string): Promise<string> {
  await page.goto(url);
  await page.getByLabel('Choose a photograph').setInputFiles(JAY);
  return recipe(page);
}
async function recipe(page: Page): Promise<string> {
  const drawn = page.getByRole('img', { name: /mixed into one pile/ }).first();
  await drawn.waitFor();
  return (await drawn.locator('title').textContent()) ?? '';
}

/** "mixed: 3 parts Lead white and 1 part Azurite, mixed into one pile" names two. */
const pigmentsOf = (words: string): string[] =>
  Array.from(words.matchAll(/\d parts? (.+?)(?=, \d| and \d|, mixed into)/g), ([, name]) => name!);

/** The versions of the harmonies on disk that have all their mixtures: another write, another clock. */
const harmonyClocks = async (page: Page): Promise<string[]> =>
  (await entriesOnDisk(page))
    .filter((entry) => entry.kind === 'harmony')
    .filter(({ body }) => (body as HarmonyBody).colours.every(({ answer }) => answer !== undefined))
    .map(({ clock }) => clock);

describeBrowser('the shelf', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  test.each([
    ['desktop', DESKTOP],
    ['phone', PHONE],
  ] as const)('a painter stocks it, on a %s', async (_, viewport) => {
    const studio = new Studio();
    try {
      const page = await studio.open(viewport);
      await slowTime(page);
      await openShelf(page, served.url);
      await page.getByText(/mixtures use the starter shelf/).waitFor();
      await expect.poll(() => page.locator('.shelf-lines li').count()).toBeGreaterThanOrEqual(16);
      expect(await violations(page)).toEqual([]);

      // A tube of white: what is wrong is said at its field, and the first white is the studio's.
      await page.getByRole('link', { name: 'Add a paint' }).click();
      await heading(page, 'Add a paint').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await page.getByText('Choose a pigment, or make one of your own first.').waitFor();
      await fill(page, { pigment: 'Titanium white', amount: 'two', lot: 'A' });
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await page.getByText(/The amount is a number from 0 up/).waitFor();
      await expect.poll(() => page.evaluate(() => document.activeElement?.id)).toBe('shelf-amount');
      expect(await violations(page)).toEqual([]);
      await page.getByLabel('Amount', { exact: true }).fill('37,5');
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await heading(page, 'Titanium white').waitFor();
      await page.getByText("This is the studio's white").waitFor();
      expect(await violations(page)).toEqual([]);

      // Another is marked in its place; a colour cannot be.
      await addPaint(page, served.url, { pigment: 'Lead white', amount: '40' });
      await expect.poll(() => page.getByText('Hazard: toxic').count()).toBe(1);
      await page.getByRole('button', { name: "Make it the studio's white" }).click();
      await page.getByText("Lead white is the studio's white now.").waitFor();
      await addPaint(page, served.url, {
        ...{ pigment: 'Yellow ochre', form: 'Dry powder', amount: '250', lot: '7' },
      });
      await expect.poll(() => page.getByRole('button', { name: /studio's white/ }).count()).toBe(0);

      // Edited, and another lot of it, which says by itself that it is another.
      await page.getByRole('link', { name: 'Edit', exact: true }).click();
      await heading(page, 'Edit Yellow ochre, lot 7, powder').waitFor();
      await page.getByLabel('Amount', { exact: true }).fill('180');
      await page.getByLabel('Grade', { exact: true }).fill('fine');
      await page.getByRole('button', { name: 'Keep the change' }).click();
      await page.getByRole('article').getByText('Dry powder · 180 g · fine, lot 7').waitFor();
      await page.getByRole('button', { name: 'Another lot of it' }).click();
      await heading(page, 'Edit Yellow ochre, fine, lot 8, powder').waitFor();
      await page.getByRole('link', { name: 'Leave it' }).click();

      // Taken off, and put back.
      await heading(page, 'Yellow ochre').waitFor();
      await page.getByRole('button', { name: 'Take it off the shelf' }).click();
      await page.getByText('Yellow ochre, fine, lot 8, powder is off the shelf.').waitFor();
      await heading(page, 'Shelf').waitFor();
      await expect.poll(() => line(page, /lot 8/).count()).toBe(0);
      await page.getByRole('button', { name: 'Undo' }).click();
      await line(page, /lot 8/).waitFor();
      await page.getByText('Mixtures use your own shelf: 3 paints.').waitFor();

      // Searched and sorted.
      await page.getByLabel('Search the shelf').fill('ochre 7');
      await expect.poll(() => page.locator('.shelf-lines li').count()).toBe(1);
      await page.getByLabel('Search the shelf').fill('purple');
      await page.getByText('Nothing on the shelf has these words.').waitFor();
      await page.getByLabel('Search the shelf').fill('');
      const names = () => page.locator('.shelf-name').allInnerTexts();
      expect((await names()).slice(0, 2)).toEqual(['Titanium white', 'Lead white']);
      await page.getByText('By name', { exact: true }).click();
      expect((await names()).slice(0, 2)).toEqual(['Lead white', 'Titanium white']);
      await page.getByText('By family', { exact: true }).click();
      await heading(page, 'Yellows').waitFor();
      expect(await violations(page)).toEqual([]);

      // Every control is large enough for a thumb.
      const small = await page.evaluate(() =>
        [...document.querySelectorAll<HTMLElement>('main a, main button, main input, main select')]
          .map((control) => (control.closest('label') ?? control) as HTMLElement)
          .filter((control) => control.getBoundingClientRect().height < 43.5)
          .map((control) => control.outerHTML.slice(0, 120)),
      );
      expect(small).toEqual([]);

      // There again as it was.
      await saved(page);
      const lines = await page.locator('.shelf-lines li').allInnerTexts();
      await page.reload();
      await heading(page, 'Shelf').waitFor();
      await page.getByText('By family', { exact: true }).click();
      await expect.poll(() => page.locator('.shelf-lines li').allInnerTexts()).toEqual(lines);
      await studio.close();
      const again = await studio.open(viewport);
      await again.goto(`${served.url}#/book/shelf`);
      await line(again, /Lead white.*studio's white/s).click();
      await again.getByText("This is the studio's white").waitFor();
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('with the keyboard alone', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await slowTime(page);
      await page.goto(`${served.url}#/book/shelf`);
      await heading(page, 'Shelf').waitFor();
      const focused = () => page.evaluate(() => document.activeElement?.textContent ?? '');
      const tabTo = async (words: string) => {
        // What has not come yet cannot be passed by.
        await page
          .locator('a, button, summary')
          .filter({ hasText: new RegExp(`^\\s*${words}`) })
          .first()
          .waitFor();
        for (let i = 0; i < 60 && !(await focused()).startsWith(words); i++)
          await page.keyboard.press('Tab');
        expect(await focused()).toMatch(new RegExp(`^${words}`));
      };
      await tabTo('Vermilion');
      await page.keyboard.press('Enter');
      await heading(page, 'Vermilion').waitFor();
      await expect.poll(focused).toBe('Vermilion');
      await tabTo('Put one on my shelf');
      await page.keyboard.press('Enter');
      await page.getByText('Vermilion is on the shelf.').waitFor();
      await page.getByText(/only the one paint/).waitFor();

      // Undone, the starter shelf is back; and it can be stocked again.
      await tabTo('Undo');
      await page.keyboard.press('Enter');
      await page.getByText(/mixtures use the starter shelf/).waitFor();
      await page.goto(`${served.url}#/book/shelf`);
      await tabTo('Yellow ochre');
      await page.keyboard.press('Enter');
      await tabTo('Put one on my shelf');
      await page.keyboard.press('Enter');
      await page.getByText(/only the one paint/).waitFor();
      await tabTo('Edit');
      await page.keyboard.press('Enter');
      await heading(page, 'Edit Yellow ochre').waitFor();
      await expect.poll(focused).toBe('Edit Yellow ochre');
      await page.goBack();
      await heading(page, 'Yellow ochre').waitFor();
      // Back on the link that led away.
      await expect.poll(focused).toBe('Edit');
      await tabTo('Take it off the shelf');
      await page.keyboard.press('Enter');
      await page.getByText(/mixtures use the starter shelf/).waitFor();
      await expect.poll(focused).toBe('Shelf');
    }));

  test('a mixture changes when the shelf does, and a kept recipe stays in the book', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await slowTime(page);
      await recipeOfJay(page, served.url);
      // As seen: keyed, the very colours that are wanted would move with the shelf.
      await page.getByText('As seen', { exact: true }).click();
      const own = ['Titanium white', 'Bone black', 'Red earth', 'Ultramarine'];
      await expect.poll(() => recipe(page)).not.toBe('');
      const before = await recipe(page);
      await openShelf(page, served.url);
      for (const pigment of own) await addPaint(page, served.url, { pigment });
      await page.getByRole('link', { name: 'Harmony', exact: true }).click();
      await expect.poll(() => recipe(page)).not.toBe(before);
      const parts = await recipe(page);
      for (const pigment of pigmentsOf(parts)) expect(own).toContain(pigment);

      // Kept; with the shelf changed again the screen shows what can be mixed today.
      await page.getByLabel('Name', { exact: true }).fill('Jay in four paints');
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await saved(page);
      await expect.poll(() => harmonyClocks(page)).toHaveLength(1);
      await atRest(page);
      const clocks = await harmonyClocks(page);
      const gone = pigmentsOf(parts).find((pigment) => pigment !== 'Titanium white')!;
      await openShelf(page, served.url);
      await line(page, new RegExp(gone)).click();
      await page.getByRole('button', { name: 'Take it off the shelf' }).click();
      await page.getByText(`${gone} is off the shelf.`).waitFor();
      await page.getByRole('link', { name: 'Harmony', exact: true }).click();
      await expect.poll(async () => pigmentsOf(await recipe(page))).not.toContain(gone);
      expect(pigmentsOf(await recipe(page)).length).toBeGreaterThan(0);
      await atRest(page);
      expect(await harmonyClocks(page)).toEqual(clocks);
      await page.getByRole('button', { name: 'Undo' }).click();
      await wasTold(page, 'Undone.');
      await page.reload();
      await expect.poll(() => recipe(page)).toBe(parts);
    }));

  test('which recipes move if a lot is replaced', () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await openShelf(page, served.url);
      await page.getByRole('button', { name: 'Take over the starter shelf' }).click();
      await page.getByText('Mixtures use your own shelf: 16 paints.').waitFor();
      await recipeOfJay(page, served.url);
      await page.getByLabel('Name', { exact: true }).fill('Jay feather');
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await saved(page);

      await page.goto(`${served.url}#/book/shelf/lead_white`);
      await page.getByText('If this lot is replaced').click();
      await page.getByText('A colour as seen', { exact: true }).click();
      const lab = page.getByLabel(/Or in figures/);
      // The same white again moves nothing; a much yellower one moves what is mixed with it.
      await lab.fill('93.3 -2.5 6.1');
      await expect
        .poll(() => page.locator('.shelf-moved').innerText())
        .toMatch(/None of the \d+ recipes|does not move/);
      await lab.fill('50 0');
      await page.getByText(/three numbers of a surface/).waitFor();
      await lab.fill('84 2 38');
      await page.locator('.shelf-moved li').first().waitFor();
      const moved = await page.locator('.shelf-moved').innerText();
      expect(moved).toMatch(/Jay feather/);
      expect(moved).toMatch(/moves by \d/);
      expect(await violations(page)).toEqual([]);
      await page.getByLabel('Its lot').fill('yellowed');
      await page.getByRole('button', { name: 'Replace the lot with this one' }).click();
      await page.getByText('Lead white, lot yellowed is changed.').waitFor();
      await page.getByRole('button', { name: 'Undo' }).click();
      await wasTold(page, 'Undone.');
      await expect.poll(() => page.getByText('lot yellowed').count()).toBe(0);
    }));

  test('a pigment of their own, from a colour as seen and from a file', () =>
    inStudio(PHONE, 'light', async (page) => {
      await page.goto(`${served.url}#/book/shelf/new`);
      await page.getByLabel('Pigment', { exact: true }).selectOption({
        label: 'A pigment of my own…',
      });
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await page.getByText('Give the pigment a name.').waitFor();
      await page.getByLabel('Name', { exact: true }).fill('Meadow green');
      expect(await page.getByLabel('How dangerous it is').inputValue()).toBe('caution');
      await page.getByLabel('Family', { exact: true }).selectOption('green');
      const own = page.locator('.shelf-own');
      await own.getByText('A colour as seen', { exact: true }).click();
      await page.getByLabel(/Or in figures/).fill('48 −22');
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await own
        .getByRole('alert')
        .getByText(/three numbers of a surface/)
        .waitFor();
      expect(await own.isVisible()).toBe(true);
      await page.getByLabel(/Or in figures/).fill('48 −22 24');
      await own.getByRole('img').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Put it on the shelf' }).click();
      await heading(page, 'Meadow green').waitFor();
      await page.getByText('Hazard: with caution').waitFor();
      await page.getByText('What it is', { exact: true }).click();
      await page.getByText(/From one colour as seen/).waitFor();

      // A file that is no curve is refused in one sentence; a sound one is taken.
      await page.getByRole('link', { name: 'Edit', exact: true }).click();
      await own.getByText('A curve file', { exact: true }).click();
      const choose = (name: string, text: string) =>
        own.getByLabel('File', { exact: true }).setInputFiles({
          ...{ name, mimeType: 'text/csv', buffer: Buffer.from(text) },
        });
      const nms = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
      const row = (kind: string, value: (nm: number) => number) =>
        `1,Meadow,${kind},${nms.map(value).join(',')}`;
      const table = (K: (nm: number) => number) =>
        [`index,pigment,coefficient,${nms}`, row('K', K), row('S', () => 0.2)].join('\n');
      await choose('poem.csv', 'Roses are red');
      await own
        .getByRole('alert')
        .getByText(/not a shelf/)
        .waitFor();
      await choose(
        'odd.csv',
        table((nm) => (nm === 500 ? -1 : 1)),
      );
      await own
        .getByRole('alert')
        .getByText(/K -1 at 500 nm/)
        .waitFor();
      await choose(
        'meadow.csv',
        table((nm) => 0.1 + Math.abs(nm - 530) / 100),
      );
      await own.getByText(/start at 400 nm/).waitFor();
      await expect.poll(() => own.getByRole('alert').count()).toBe(0);
      await page.getByRole('button', { name: 'Keep the change' }).click();
      await page.getByText('Meadow green is changed.').waitFor();
      await page.getByText('What it is', { exact: true }).click();
      await page.getByText(/K and S of a file that you read in/).waitFor();
      await saved(page);
      await page.reload();
      await heading(page, 'Meadow green').waitFor();
    }));
});
