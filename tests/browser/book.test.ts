import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from '../tools/axe.ts';
import { DESKTOP, describeBrowser, holdWork, PHONE, Studio, slowTime, wasTold } from './open.ts';
import { Probed } from './probed.ts';

/** A folder for pictures to look at; none unless told. */
const LOOK = process.env.KINGCUP_LOOK;
const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

/** As in a browser that has no way to ask where a file goes: it is then among the downloads. */
const withoutPicker = (context: BrowserContext) =>
  context.addInitScript(() => {
    Object.defineProperty(window, 'showSaveFilePicker', { value: undefined });
  });

const rows = (page: Page) => page.locator('.long .row');
const counted = (page: Page) => page.locator('.found').innerText();

/** Presses what makes a file, and gives the file. */
async function fileOf(
  page: Page,
  press: () => Promise<void>,
): Promise<{ name: string; bytes: Buffer }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

async function copyOf(page: Page): Promise<{ name: string; bytes: Buffer }> {
  await page.getByRole('button', { name: 'Make a copy of the book' }).click();
  const save = page.getByRole('button', { name: 'Save the file' });
  await save.waitFor();
  return fileOf(page, () => save.click());
}

async function choose(page: Page, bytes: Buffer, name = 'copy.zip'): Promise<void> {
  await page
    .getByLabel('Choose a copy')
    .setInputFiles({ name, mimeType: 'application/zip', buffer: bytes });
}

const wipe = (page: Page, url: string) =>
  page
    .context()
    .newCDPSession(page)
    .then((session) =>
      session.send('Storage.clearDataForOrigin', {
        origin: new URL(url).origin,
        storageTypes: 'indexeddb',
      }),
    );

describeBrowser('the book as a painter meets it', () => {
  const probed = new Probed();
  beforeAll(() => probed.start());
  afterAll(() => probed.stop());

  /** A browser with a filled book, and everything that it asks of any other place. */
  async function filled(count: number, viewport = DESKTOP, pictures = true) {
    const studio = new Studio();
    const page = await studio.open(viewport);
    const away: string[] = [];
    // Of every page, frame and worker, the service worker too.
    page.context().on('request', (request) => {
      if (!/^(blob:|data:)/.test(request.url()) && !request.url().startsWith(probed.url))
        away.push(request.url());
    });
    await withoutPicker(page.context());
    await slowTime(page);
    await probed.probe(page);
    await page.evaluate(([n, withPictures]) => window.probe.fill(n, 7, withPictures), [
      count,
      pictures,
    ] as const);
    await page.goto(`${probed.url}#/book`);
    await rows(page).first().waitFor();
    return { studio, page, away };
  }

  test.each([
    ['desktop', DESKTOP],
    ['phone', PHONE],
  ])(
    'filled, searched, emptied, copied, wiped and brought in again, on a %s',
    async (_, viewport) => {
      const { studio, page, away } = await filled(40, viewport);
      const isWide = viewport === DESKTOP;
      try {
        expect(await violations(page)).toEqual([]);
        const all = Number.parseInt(await counted(page), 10);
        expect(all).toBe(70);
        // Much was written, and no copy of it was made.
        const reminder = page.getByText('Time for a copy.');
        expect(await reminder.isVisible()).toBe(true);

        // By word, by colour, by pigment, by kind; each narrows the others down.
        await page.getByRole('searchbox').fill('wei');
        await expect.poll(() => counted(page)).toMatch(/ of 70/);
        for (const name of await page.locator('.row-name').allInnerTexts())
          expect(name).toMatch(/^Weir/);
        await page.getByRole('searchbox').fill('');
        await expect.poll(() => counted(page)).toBe('70 entries');
        await page.getByText('Narrow it down').click();
        await page
          .getByRole('list', { name: 'Colours of this book' })
          .getByRole('button')
          .nth(4)
          .click();
        await expect.poll(() => counted(page)).toMatch(/ of 70/);
        const near = Number.parseInt(await counted(page), 10);
        const differences = (await page.locator('.row-words .small').allInnerTexts()).map((text) =>
          Number(/differs by ([\d.]+)/.exec(text)![1]),
        );
        expect(differences.length).toBeGreaterThan(0);
        expect(differences).toEqual(differences.toSorted((x, y) => x - y));
        expect(differences.every((difference) => difference <= 8.05)).toBe(true);
        expect(await violations(page)).toEqual([]);
        await page.getByLabel('Within this difference').fill('20');
        await expect
          .poll(async () => Number.parseInt(await counted(page), 10))
          .toBeGreaterThan(near);
        const wider = Number.parseInt(await counted(page), 10);
        await page.getByLabel('Pigment used').selectOption({ label: 'Azurite' });
        await page.getByLabel('Kind').selectOption({ label: 'Harmony' });
        await expect.poll(async () => Number.parseInt(await counted(page), 10)).toBeLessThan(wider);
        await page.getByRole('button', { name: 'Without: Azurite' }).click();
        await page.getByRole('button', { name: 'Clear the search' }).click();
        await expect.poll(() => counted(page)).toBe('70 entries');
        await page.getByText('Narrow it down').click();

        // One entry, all of it.
        await page.getByRole('searchbox').fill('Weir');
        await expect.poll(() => counted(page)).toMatch(/ of 70/);
        const first = rows(page).first();
        const name = await first.locator('.row-name').innerText();
        expect(name).toMatch(/^Weir/);
        await first.click();
        const heading = page.locator('.entry h2');
        await expect.poll(() => heading.innerText()).toBe(name);
        await page.locator('.entry-photograph img').waitFor();
        expect(await violations(page)).toEqual([]);

        // Away, back from the bin after a reload, and found again.
        await page.getByRole('button', { name: 'Put into the bin' }).click();
        await page.getByText(`“${name}” is in the bin for 30 days.`).waitFor();
        await page.reload();
        await page.getByRole('link', { name: 'Bin', exact: true }).click();
        await page.getByText(/here until/).waitFor();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: `Put back: ${name}` }).click();
        await page.getByText('The bin is empty.').waitFor();
        await page.getByRole('link', { name: 'Entries' }).click();
        await expect.poll(() => counted(page)).toBe('70 entries');

        // A copy leaves; the book is wiped; the copy brings it back.
        await page.getByRole('link', { name: 'Copies', exact: true }).click();
        const copy = await copyOf(page);
        expect(copy.name).toMatch(/^kingcup-book-\d{4}-\d\d-\d\d\.zip$/);
        await page.getByText('The copy has left Kingcup.').waitFor();
        await page.getByText('Nothing has changed since.').waitFor();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('link', { name: 'Entries' }).click();
        await rows(page).first().waitFor();
        await expect.poll(() => reminder.count()).toBe(0);
        await page.goto('about:blank');
        await wipe(page, probed.url);
        await page.goto(`${probed.url}#/book`);
        await page.getByText('The book is empty.').waitFor();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('link', { name: 'Bring in a copy' }).click();
        await choose(page, copy.bytes);
        await page.getByText('New: 70').waitFor();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: 'Bring it in' }).click();
        await page.getByText('Brought in: 70 entries.').waitFor();
        await page.getByRole('link', { name: 'Entries' }).click();
        await expect.poll(() => counted(page)).toBe('70 entries');
        await rows(page).first().locator('img').waitFor();

        // The same copy again changes nothing; and the whole can be undone.
        await page.getByRole('link', { name: 'Copies', exact: true }).click();
        await choose(page, copy.bytes);
        await page.getByText('Nothing in this copy is new').waitFor();
        await page.getByRole('button', { name: 'Leave it' }).click();
        await page.getByRole('button', { name: 'Undo' }).click();
        await page.getByRole('link', { name: 'Entries' }).click();
        await page.getByText('The book is empty.').waitFor();
        expect(isWide ? await page.locator('.places').isVisible() : true).toBe(true);
        expect(studio.errors).toEqual([]);
        expect(away).toEqual([]);
      } finally {
        await studio.discard();
      }
    },
  );

  test('a second device’s copy, merged twice: both versions are kept, once', async () => {
    const one = await filled(6, DESKTOP, false);
    const two = new Studio();
    try {
      await one.page.getByRole('link', { name: 'Copies', exact: true }).click();
      const seed = await copyOf(one.page);
      const other = await two.open();
      await withoutPicker(other.context());
      await probed.probe(other);
      const id = await other.evaluate(
        async (copy) => {
          await window.probe.bringIn(copy);
          const { names } = await window.probe.audit();
          const first = Object.keys(names).sort()[0]!;
          await window.probe.rename(first, 'As the second device has it');
          return first;
        },
        probed.put('seed.zip', seed.bytes),
      );
      await other.goto(`${probed.url}#/book/copies`);
      const theirs = await copyOf(other);

      // The first device changes the same entry, without knowing.
      const { page } = one;
      await page.goto(`${probed.url}#/book/${id}`);
      await page.getByRole('button', { name: 'Rename' }).click();
      await page.getByRole('textbox', { name: 'Name' }).fill('As the first device has it');
      await page.getByRole('button', { name: 'Rename' }).click();
      await page.getByText('It is called').waitFor();
      await page.getByRole('link', { name: 'Copies', exact: true }).click();
      for (const round of [1, 2]) {
        await choose(page, theirs.bytes);
        if (round === 1) {
          await page.getByText('both versions are kept: 1').waitFor();
          await page.getByRole('button', { name: 'Bring it in' }).click();
          await page.getByText('Brought in: 1 entry.').waitFor();
        } else await page.getByText('Nothing in this copy is new').waitFor();
      }
      await page.getByRole('link', { name: 'Entries' }).click();
      await page.getByText('One entry is here in two versions').waitFor();
      await expect.poll(() => counted(page)).toBe('7 entries');
      await page.getByRole('button', { name: 'Show them' }).click();
      expect((await page.locator('.row-name').allInnerTexts()).toSorted()).toEqual([
        'As the first device has it',
        'As the second device has it',
      ]);
      expect(await violations(page)).toEqual([]);
      await rows(page).filter({ hasText: 'second' }).click();
      await page.getByRole('heading', { name: 'Two versions' }).waitFor();
      // What differs stands side by side, in words.
      const differences = page.getByRole('table', { name: 'What differs' });
      await differences.waitFor();
      expect(await differences.getByRole('row').allInnerTexts()).toEqual([
        expect.stringMatching(/What differs\s+In force\s+Kept beside it/),
        expect.stringMatching(/Name\s+As the first device has it\s+As the second device has it/),
      ]);
      expect(await violations(page)).toEqual([]);
      if (LOOK) await page.screenshot({ path: resolve(LOOK, 'versions.png'), fullPage: true });

      // The one beside is kept under the entry's own name; undone; then both are kept.
      await page.getByRole('button', { name: 'Keep the one beside' }).click();
      await page.getByText('“As the second device has it” is kept').waitFor();
      await expect.poll(() => counted(page)).toBe('6 entries');
      expect(await page.evaluate(() => location.hash)).toContain(id);
      await page.getByRole('button', { name: 'Undo' }).click();
      await page.getByText('One entry is here in two versions').waitFor();
      await page.getByRole('button', { name: 'Keep both' }).click();
      await expect.poll(() => page.getByText('here in two versions').count()).toBe(0);
      await expect.poll(() => counted(page)).toBe('7 entries');
      // Their copy once more brings nothing back.
      await page.getByRole('link', { name: 'Copies', exact: true }).click();
      await choose(page, theirs.bytes);
      await page.getByText('Nothing in this copy is new').waitFor();
      expect(one.studio.errors).toEqual([]);
    } finally {
      await one.studio.discard();
      await two.discard();
    }
  });

  test('an entry leaves as card, table, data, print and a copy of its own', async () => {
    const { studio, page } = await filled(5);
    try {
      await page.getByRole('searchbox').fill('Lane');
      await page.getByText('Narrow it down').click();
      await page.getByLabel('Kind').selectOption({ label: 'Harmony' });
      await rows(page).first().click();
      await page.getByRole('button', { name: 'Rename' }).click();
      const name = '</svg><script>alert(1)</script> & "=cmd"';
      await page.getByRole('textbox', { name: 'Name' }).fill(name);
      await page.getByRole('button', { name: 'Rename' }).click();
      await page.getByText('It is called').waitFor();
      await page.getByRole('button', { name: 'Clear the search' }).click();
      await rows(page).filter({ hasText: 'script' }).click();

      const press = (text: string) => () =>
        page.getByRole('button', { name: text, exact: true }).click();
      const svg = await fileOf(page, press('Card (SVG)'));
      expect(svg.name).toMatch(/^harmony-svg-script-alert-1-script-cmd-[\d-]+\.svg$/);
      const drawing = svg.bytes.toString();
      expect(drawing).toContain('&lt;/svg&gt;&lt;script&gt;');
      expect(drawing).not.toContain('<script');
      const { default: sharp } = await import('sharp');
      expect((await sharp(svg.bytes).metadata()).width).toBe(794);
      const csv = await fileOf(page, press('Table (CSV)'));
      expect(csv.bytes.toString().split('\n')[0]).toContain('colour,hex,L*,a*,b*,share,parts');
      const json = await fileOf(page, press('Data (JSON)'));
      expect(JSON.parse(json.bytes.toString())).toMatchObject({ kind: 'harmony', body: { name } });

      await page.getByRole('button', { name: 'Copy to hand on' }).click();
      const save = page.getByRole('button', { name: 'Save the file' });
      await save.waitFor();
      await page.getByText(/The copy is ready: \d entr/).waitFor();
      const copy = await fileOf(page, () => save.click());
      expect(copy.bytes.subarray(0, 2).toString()).toBe('PK');
      expect(await violations(page)).toEqual([]);

      // In print there is the sheet alone, and its colours are there with backgrounds off.
      const pdf = await page.pdf({ printBackground: false, format: 'A4' });
      expect(pdf.length).toBeGreaterThan(5000);
      await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
      await page.emulateMedia({ media: 'print' });
      expect(await page.locator('.drawing').isVisible()).toBe(true);
      expect(await page.locator('.pane-list').isVisible()).toBe(false);
      expect(await page.getByRole('button').first().isVisible()).toBe(false);
      await page.emulateMedia({ media: null });
      await page.evaluate(() => dispatchEvent(new Event('afterprint')));
      await expect.poll(() => page.locator('.drawing').count()).toBe(0);
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('damaged and foreign files are refused with a sentence', async () => {
    const { studio, page } = await filled(6);
    try {
      await page.getByRole('link', { name: 'Copies', exact: true }).click();
      const copy = await copyOf(page);
      await choose(page, Buffer.from('no zip at all'));
      await page.getByText('This file is no copy of a Kingcup book').waitFor();
      await choose(page, copy.bytes.subarray(0, copy.bytes.length / 2));
      await page.getByText('nothing was brought in').waitFor();
      const flipped = Buffer.from(copy.bytes);
      flipped[Math.floor(flipped.length / 2)]! ^= 1;
      await choose(page, flipped);
      await page.getByText('This copy is not as it was made').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('link', { name: 'Entries' }).click();
      await expect.poll(() => counted(page)).toBe('11 entries');
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('making and looking through a copy show how far they are, and can be stopped', async () => {
    const { studio, page } = await filled(6);
    try {
      await page.getByRole('link', { name: 'Copies', exact: true }).click();
      const copy = await copyOf(page);
      await page.getByRole('button', { name: 'Close' }).click();
      const letGo = await holdWork(page);
      await page.getByRole('button', { name: 'Make a copy of the book' }).click();
      await page.getByRole('progressbar', { name: 'Making the copy…' }).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Stop' }).click();
      await wasTold(page, 'Stopped. No copy was made.');
      await page.getByRole('button', { name: 'Make a copy of the book' }).waitFor();
      await choose(page, copy.bytes);
      await page.getByText('Looking through the copy…').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Stop' }).click();
      await wasTold(page, 'Stopped. The book is as it was before.');
      await page.getByLabel('Choose a copy').waitFor();
      // What was stopped does not come after all, and the next is made.
      await letGo();
      await page.getByRole('button', { name: 'Make a copy of the book' }).click();
      await page.getByText(/The copy is ready: 1\d entries/).waitFor();
      await page.getByRole('link', { name: 'Entries' }).click();
      await expect.poll(() => counted(page)).toBe('11 entries');
      expect(studio.errors).toEqual([]);
    } finally {
      await studio.discard();
    }
  });

  test('the browser’s promise is asked for after the first save, and its answer stands in the book', async () => {
    const studio = new Studio();
    try {
      const page = await studio.open();
      await page.addInitScript(() => {
        const asked = { count: 0 };
        Object.assign(window, { asked });
        navigator.storage.persist = async () => {
          asked.count++;
          return true;
        };
      });
      const asked = () =>
        page.evaluate(() => (window as unknown as { asked: { count: number } }).asked.count);
      await page.goto(`${probed.url}#/book/copies`);
      await page.getByText('When you first save something').waitFor();
      expect(await asked()).toBe(0);
      await page.getByRole('link', { name: 'Walk', exact: true }).click();
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      await expect.poll(asked).toBe(1);
      await page.goto(`${probed.url}#/book/copies`);
      await page.getByText('This browser keeps the book until you remove it').waitFor();
      expect(await asked()).toBe(1);
    } finally {
      await studio.discard();
    }
  });
});
