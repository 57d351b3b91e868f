import type { Page } from 'playwright-core';
import { afterAll, beforeEach, expect, test } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import { entriesOnDisk } from '../browser/disk.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, wakeAt } from '../browser/open.ts';
import { violations } from '../tools/axe.ts';

const HARMONY = 'What the stream showed';
const DRAPERY = 'Cloths of the stream';
/** The two days of the story: no run of it comes upon a midnight. */
const DAY = '2026-05-12';
const NEXT = '2026-05-13';

const button = (page: Page, name: string | RegExp) =>
  page.getByRole('button', { name, exact: true });
const link = (page: Page, name: string | RegExp) => page.getByRole('link', { name, exact: true });
const heading = (page: Page, name: string) =>
  page.getByRole('heading', { name, exact: true }).first();
const place = (page: Page, name: string) =>
  page.locator('.places').getByRole('link', { name, exact: true });
const saved = (page: Page) =>
  page.locator('.save-line').getByText('Saved in this browser', { exact: true }).waitFor();
/** What the colours of the harmony on the screen are called. */
const colours = (page: Page) => page.locator('.wall').getByRole('button').allInnerTexts();
/** The recipes on the bench, as they are read aloud: what is mixed, then a variant on trial. */
const recipes = (page: Page, where: string) =>
  page.locator(where).getByRole('img', { name: /mixed into one pile/ });
const recipe = async (page: Page, where = '.bench'): Promise<string> =>
  (await recipes(page, where).first().locator('title').textContent()) ?? '';

interface Row {
  readonly pigment: string;
  readonly weigh: string;
  readonly cm3: number;
}
interface Heap {
  readonly name: string;
  readonly cm3: number;
  readonly parts: readonly {
    readonly words: string;
    readonly pigment: string;
    readonly cm3: number;
  }[];
}
/** What a morning sheet says: its day, what to prepare, under which heads, and the piles to be mixed of it. */
const sheetOf = (page: Page) =>
  page.locator('.sheet').evaluate((sheet) => {
    const words = (of: Element | null) => (of?.textContent ?? '').replaceAll(/\s+/g, ' ').trim();
    const all = (of: Element, selector: string) => [...of.querySelectorAll(selector)];
    return {
      day: words(sheet.querySelector('.when b')),
      heads: all(sheet, '.prepare .tools').map(words),
      prepare: all(sheet, '.prepare tr:has(.name)').map(
        (row): Row => ({
          pigment: words(row.querySelector('.name b')),
          weigh: words(row.querySelector('.figure')),
          cm3: Number(words(row.querySelector('.paste'))),
        }),
      ),
      piles: all(sheet, 'article.pile').map((pile): Heap => {
        const cm3 = Number.parseFloat(words(pile.querySelector('.cm3')));
        return {
          name: words(pile.querySelector('.pilename')),
          cm3,
          parts: all(pile, '.parts li').map((part) => {
            const own = part.querySelector(':scope > span');
            const [count] = words(part.querySelector('b')).split(' ');
            const rest = [...part.childNodes].find(({ nodeType }) => nodeType === Node.TEXT_NODE);
            const [pigment = ''] = (rest?.textContent ?? '').trim().split(',');
            return {
              words: `${count} ${Number(count) === 1 ? 'part' : 'parts'} ${pigment}`,
              pigment,
              cm3: own === null ? cm3 : Number(words(own)),
            };
          }),
        };
      }),
    };
  });

/** What is left of the day's piles, as it is on disk. */
const leftovers = async (page: Page) =>
  (await entriesOnDisk(page))
    .filter((entry): entry is Entry<'leftover'> => entry.kind === 'leftover')
    .map(({ body: { name, cm3, date } }) => ({ name, cm3, day: date.slice(0, 10) }));

/** Searches the book and opens the one harmony that is found. */
async function findInBook(page: Page): Promise<void> {
  await heading(page, 'Book').waitFor();
  await page
    .locator('.found')
    .getByText(/^\d+ entries$/)
    .waitFor();
  const all = Number.parseInt(await page.locator('.found').innerText(), 10);
  await page.getByRole('searchbox').fill('stream showed');
  await page.locator('.found').getByText(`of ${all}`).waitFor();
  const found = page
    .locator('.long .row')
    .filter({ hasText: HARMONY })
    .filter({ hasText: 'Harmony ·' });
  await found.click();
  await page.locator('.entry').getByRole('heading', { name: HARMONY, exact: true }).waitFor();
}

describeBrowser('two days in the studio, with no server from the first harmony on', () => {
  const served = new Served();
  beforeEach(() => served.start());
  afterAll(() => served.stop());

  test('walk, harmony, drapery, shelf, palette, sheet, evening, book, and the next morning', () =>
    inStudio(DESKTOP, 'light', async (first, studio) => {
      await served.start();
      const away: string[] = [];
      const stayHome = () =>
        studio.context.on('request', (request) => {
          if (!/^(blob:|data:)/.test(request.url()) && !request.url().startsWith(served.url))
            away.push(request.url());
        });
      stayHome();
      await wakeAt(studio, `${DAY}T08:00`);
      let page = first;

      // Walk: the first visit, with no photograph at hand.
      await page.goto(served.url);
      await heading(page, 'What did you see?').waitFor();
      await button(page, 'A rowan branch').waitFor();
      await page.getByLabel('Choose a photograph').waitFor({ state: 'attached' });
      expect(await violations(page)).toEqual([]);
      await button(page, 'A jay’s feather').click();

      // Harmony: colours on the wall, each with a mixture of its own.
      await button(page, 'Keep this harmony').waitFor();
      await recipes(page, '.bench').first().waitFor();
      const hung = await colours(page);
      expect(hung.length).toBeGreaterThanOrEqual(3);
      expect(hung.length).toBeLessThanOrEqual(7);
      expect(new Set(hung).size).toBe(hung.length);
      const plain = await recipe(page);
      expect(plain).toMatch(/^mixed: \d+ parts? .+, mixed into one pile/);
      expect(await violations(page)).toEqual([]);

      // A variant has its own mixture, takes the place of its origin, is undone, and taken again.
      await page.getByText('The figures').first().click();
      const figures = () => page.locator('.bench .figures').first();
      const take = async () => {
        await page
          .getByRole('list', { name: 'From cool to warm' })
          .getByRole('button', { name: /cooler, clearly/ })
          .click();
        await recipes(page, '.variant-preview').first().waitFor();
        await button(page, 'Take this variant').click();
      };
      // What is nearest is said last of all.
      const nearest = () => figures().getByText('Nearest of all');
      await nearest().waitFor();
      const wanted = await figures().innerText();
      await take();
      await expect.poll(() => figures().innerText()).not.toContain(wanted.split('\n')[1]);
      await nearest().waitFor();
      const varied = await figures().innerText();
      expect(await violations(page)).toEqual([]);
      await button(page, 'Undo').click();
      await expect.poll(() => figures().innerText()).toBe(wanted);
      await expect.poll(() => recipe(page)).toBe(plain);
      await take();
      await expect.poll(() => figures().innerText()).toBe(varied);
      await expect.poll(() => recipe(page)).not.toBe(plain);
      const mixed = await recipe(page);
      await page.getByLabel('Name', { exact: true }).last().fill(HARMONY);
      await button(page, 'Keep this harmony').click();
      await page.getByText('This harmony is in the book').waitFor();
      await saved(page);

      // From here on there is no server.
      await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
      await served.stop();
      await page.reload();
      await heading(page, HARMONY).waitFor();
      await page.getByText('The figures').first().click();
      await expect.poll(() => figures().innerText()).toBe(varied);
      await expect.poll(() => recipe(page)).toBe(mixed);
      await expect.poll(() => colours(page)).toEqual(hung);

      // Drapery: two garments and a trim, each in six folds.
      await button(page, 'Make a drapery of it').click();
      await heading(page, 'From the highlight to the deepest fold').waitFor();
      await page.locator('button:enabled', { hasText: 'Keep it as a formula' }).waitFor();
      const folds = page.locator('.drapery-bench .drapery-steps');
      await expect.poll(() => folds.getByRole('listitem').count()).toBe(6);
      expect(await folds.innerText()).toMatch(
        /highlight.*light.*local colour.*half-tone.*shadow.*deepest fold/is,
      );
      expect(await folds.innerText()).toMatch(/\d+ parts?/);
      expect(await page.locator('.drapery-relations').innerText()).toMatch(/is dominant/);
      await page.getByLabel('Name of the drapery').fill(DRAPERY);
      await button(page, 'Keep this drapery').click();
      await page.getByText('This drapery is in the book.').waitFor();
      await saved(page);

      // Shelf: the paints that everything is mixed of become the painter's own.
      await place(page, 'Book').click();
      await link(page, 'Shelf').click();
      await heading(page, 'Shelf').waitFor();
      await page.getByText(/mixtures use the starter shelf/).waitFor();
      await button(page, 'Take over the starter shelf').click();
      await page.getByText('Mixtures use your own shelf: 16 paints.').waitFor();
      expect(await page.locator('.shelf-name').allInnerTexts()).toEqual(
        expect.arrayContaining(['Lead white', 'Vermilion', 'Ultramarine']),
      );
      await saved(page);

      // Palette: the harmony is laid out for today.
      await place(page, 'Palette').click();
      await page.getByText('Nothing is laid out for this day').waitFor();
      expect(await page.getByLabel('The day').inputValue()).toBe(DAY);
      await page.getByRole('button', { name: `${HARMONY} harmony` }).click();
      await heading(page, HARMONY).waitFor();
      expect(await page.getByRole('article').count()).toBe(hung.length);
      await page.getByText('All piles at once').click();
      await page.getByLabel('All of them together cover, cm²').fill(`${hung.length * 300}`);
      await button(page, 'Set all piles').click();
      const areas = page.getByLabel('Square centimetres');
      await expect.poll(() => areas.last().inputValue()).toBe('300');
      await saved(page);
      await link(page, 'The day’s palette').first().click();
      await page.getByRole('img', { name: /palette with the thumb hole/ }).waitFor();
      await page.locator('.pal-board').getByRole('button', { name: 'Lead white' }).waitFor();

      // Sheet: what to prepare is what the piles are mixed of, enough of it, the poisonous last and by itself.
      await link(page, 'Morning sheet').click();
      await page.locator('.sheet').waitFor();
      const sheet = await sheetOf(page);
      expect(sheet.day).toBe('Tuesday 12 May 2026');
      expect(sheet.piles.map(({ name }) => name).sort()).toEqual([...hung].sort());
      const [chosen] = hung;
      const heap = sheet.piles.find(({ name }) => name === chosen);
      expect(heap?.parts.map(({ words }) => words).join(' and ')).toBe(
        mixed.replace('mixed: ', '').replace(', mixed into one pile', ''),
      );
      const taken = new Map<string, number>();
      for (const { cm3, parts } of sheet.piles) {
        // 300 square centimetres of body colour, 40 micrometres thick, are 1.2 cm³; then come tooth and waste.
        expect(cm3).toBeGreaterThan(1.2);
        expect(cm3).toBeLessThan(2 * 1.2);
        for (const part of parts)
          taken.set(part.pigment, (taken.get(part.pigment) ?? 0) + part.cm3);
      }
      expect(sheet.prepare.map(({ pigment }) => pigment).sort()).toEqual([...taken.keys()].sort());
      for (const { pigment, weigh, cm3 } of sheet.prepare) {
        expect(weigh, pigment).toMatch(/^(about )?\d+(\.\d+)? g$/);
        // Parts are written to two figures.
        expect(cm3, pigment).toBeGreaterThan(0.9 * taken.get(pigment)!);
      }
      expect(sheet.prepare.slice(-2).map(({ pigment }) => pigment)).toEqual([
        'Lead white',
        'Vermilion',
      ]);
      expect(sheet.heads).toEqual([
        'on the shared slab',
        'lead: slab, knife and rag of its own',
        'mercury: slab, knife and rag of its own',
      ]);
      expect(await page.locator('.sheet').innerText()).toContain('Oily rags catch fire');
      expect(await violations(page)).toEqual([]);
      await button(page, 'Prepared: take it from the stock').click();
      await button(page, 'Not prepared after all: put it back').waitFor();
      await saved(page);

      // Evening: one pile was laid, of another something is left.
      const [laid, left] = [sheet.piles[0]!.name, sheet.piles[1]!.name];
      await link(page, 'The day’s palette').click();
      await page.getByText('Prepared; what it took has left the stock.').waitFor();
      await page.getByText('At the day’s end').click();
      const end = (name: string) => page.getByRole('group', { name, exact: true });
      await end(left).getByLabel('Left, cm³').fill('0.5');
      await end(left).getByLabel('Left, cm³').blur();
      await button(page, `Note what is left of “${left}”`).click();
      await expect.poll(() => leftovers(page)).toEqual([{ name: left, cm3: 0.5, day: DAY }]);
      await button(page, `“${laid}” was laid today`).click();
      await end(laid).getByText('It is a coat of today.').waitFor();
      await saved(page);

      // Book: found by search; and once more with no server.
      await place(page, 'Book').click();
      await findInBook(page);
      expect(await violations(page)).toEqual([]);
      await page.reload();
      await findInBook(page);
      expect(studio.errors).toEqual([]);

      // The next morning, on a phone: the browser was closed, the server is still away.
      await studio.close();
      page = await studio.open(PHONE);
      stayHome();
      await wakeAt(studio, `${NEXT}T08:00`);
      await page.goto(`${served.url}#/book`);
      await page.locator('.long .row').filter({ hasText: DRAPERY }).waitFor();
      await findInBook(page);
      await link(page, 'Open in Harmony').click();
      await heading(page, HARMONY).waitFor();
      await page.getByText('The figures').first().click();
      await expect.poll(() => figures().innerText()).toBe(varied);
      await expect.poll(() => recipe(page)).toBe(mixed);
      await expect.poll(() => colours(page)).toEqual(hung);
      await place(page, 'Book').click();
      await page.getByRole('searchbox').fill('');
      await page.locator('.long .row').filter({ hasText: DRAPERY }).click();
      await page.locator('.entry').getByRole('heading', { name: DRAPERY, exact: true }).waitFor();
      await page.goto(`${served.url}#/book/shelf`);
      await page.getByText('Mixtures use your own shelf: 16 paints.').waitFor();
      await place(page, 'Palette').click();
      await heading(page, 'Use first: left from before').waitFor();
      await page.getByText(`“${left}”, 0.5 cm³, under film since 12 May`).waitFor();
      await page.goto(`${served.url}#/palette/${DAY}`);
      await page.getByText('Prepared; what it took has left the stock.').waitFor();
      await page.goto(`${served.url}#/palette/sheet/${DAY}`);
      await page.locator('.sheet').waitFor();
      expect(await sheetOf(page)).toEqual(sheet);
      expect(away).toEqual([]);
    }));
});
