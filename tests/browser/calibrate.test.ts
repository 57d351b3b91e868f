import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import type { Part } from '../../src/calibration/painted-swatch.ts';
import type { SwatchCard } from '../../src/calibration/swatch-card.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { spectraCgats } from '../../src/pigment/import/read-spectra.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { violations, violationsInBoth } from '../tools/axe.ts';
import { type Photo, photograph, type Shot } from '../tools/card-photo.ts';
import { jpegOf } from '../tools/card-photographs.ts';
import { readPdf, tellUnread } from '../tools/poppler.ts';
import { entriesOnDisk } from './disk.ts';
import { DESKTOP, describeBrowser, inStudio, PHONE, Served, slowTime } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

/** The painter's own tubes: every colour tints twice as strongly as the handbook's; the white is the handbook's. */
const tube = (pigment: string) => {
  const { K, S } = builtInPaintOf(pigment)!;
  return pigment === 'lead_white' ? { K, S } : { K: spectrum<'K'>(K.map((k) => 2 * k)), S };
};
const reflectance = (parts: readonly Part[]): Reflectance =>
  predictReflectance(
    { parts: parts.map((part) => part.parts) },
    parts.map(({ pigment }) => tube(pigment)),
    STARTER_SURFACE,
  );

const ofKind = async <K extends Entry['kind']>(page: Page, kind: K): Promise<Entry<K>[]> =>
  (await entriesOnDisk(page)).filter((entry) => entry.kind === kind) as unknown as Entry<K>[];

const button = (page: Page, name: string) => page.getByRole('button', { name, exact: true });
const heading = (page: Page, name: string) => page.getByRole('heading', { name, exact: true });
const go = async (page: Page, url: string, address: string, name: string) => {
  await page.goto(`${url}#/${address}`);
  await heading(page, name).waitFor();
};
/** The recipe and what is said of it on the bench of the harmony that is open. */
const bench = (page: Page) => page.locator('section[aria-labelledby="bench-heading"]');
const recipe = async (page: Page): Promise<string> => {
  const drawn = bench(page)
    .getByRole('img', { name: /mixed into one pile/ })
    .first();
  await drawn.waitFor();
  return (await drawn.locator('title').textContent()) ?? '';
};
/** Controls that are too small for a thumb. */
const small = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('main a, main button, main input, main select')]
      .map((control) => (control.closest('label') ?? control) as HTMLElement)
      .filter((control) => control.getBoundingClientRect().height < 43.5)
      .map((control) => control.outerHTML.slice(0, 120)),
  );
const sidewise = (page: Page) =>
  page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);

tellUnread('what is printed');

describeBrowser('the painter’s own paints', () => {
  const served = new Served();
  const folder = mkdtempSync(join(tmpdir(), 'kingcup-card-'));
  beforeAll(() => served.start());
  afterAll(async () => {
    rmSync(folder, { recursive: true, force: true });
    await served.stop();
  });

  const shoot = async (plan: SwatchCard, shot: Shot): Promise<{ photo: Photo; path: string }> => {
    const photo = await photograph(plan, ({ parts }) => reflectance(parts), shot);
    const path = join(folder, `${Math.random()}.jpg`);
    writeFileSync(path, await jpegOf(photo.pixels));
    return { photo, path };
  };

  test('are brushed out, photographed, accepted, undone; measured, logged, and still there', async () => {
    await inStudio(DESKTOP, 'light', async (page) => {
      const { url } = served;
      await slowTime(page);
      await page.addInitScript(() => {
        window.print = () => {};
      });
      // Nothing is stocked: no card without a shelf of one's own.
      await go(page, url, 'book/shelf/swatches', 'Your own paints');
      await page.getByText('The shelf is still the starter shelf').waitFor();
      await go(page, url, 'book/shelf', 'Shelf');
      await button(page, 'Take over the starter shelf').click();
      await page.getByText('The starter shelf is yours now').waitFor();

      // A mixture on the bench, foreseen from the handbook.
      await page.goto(`${url}#/walk`);
      await page.getByLabel('Choose a photograph').setInputFiles(JAY);
      const before = await recipe(page);
      await bench(page).getByText('Foreseen from handbooks').waitFor();
      const harmony = page.url();
      const names = [...before.matchAll(/\d parts? (.+?)(?=, \d| and \d|, mixed into)/g)].map(
        ([, name]) => name!,
      );

      // A card of its pigments, printed on one page of A4.
      await bench(page).getByRole('link', { name: 'Brush out your own paints' }).first().click();
      await heading(page, 'Your own paints').waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('link', { name: 'Brush out a card' }).click();
      await heading(page, 'Brush out a card').waitFor();
      await button(page, 'None').click();
      await page.getByText('Choose at least one paint for the card.').waitFor();
      for (const name of names.filter((one) => one !== 'Lead white'))
        await page.locator('.swatch-paints').getByLabel(name, { exact: true }).check();
      await page.locator('.swatch-sheet svg').waitFor();
      expect(await violations(page)).toEqual([]);
      await button(page, 'Print it').click();
      await page.getByText(/is kept: come back with its photograph/).waitFor();
      const printed = readPdf(await page.pdf({ preferCSSPageSize: true }));
      if (printed) {
        expect(printed.pages).toBe(1);
        expect(printed.about).toMatch(/A4/);
        expect(printed.text).toMatch(/Card 1, .*: swatches of your own paints/);
        for (const name of names) expect(printed.text).toContain(`${name}, alone`);
        expect(printed.text).not.toContain('Brush out a card');
      }
      const [card] = await ofKind(page, 'card');
      const { plan } = card!.body;

      // Two lights, then a page half out of the picture: one sentence each, and nothing is changed.
      await button(page, 'Read its photograph').click();
      await heading(page, 'Read the photograph').waitFor();
      const choose = page.getByLabel('Choose a photograph');
      await choose.setInputFiles((await shoot(plan, { size: 740, lamp: 0.8 })).path);
      await expect.poll(() => page.getByRole('alert').innerText()).toMatch(/^Two lights/);
      await choose.setInputFiles((await shoot(plan, { size: 740, offset: [0.42, 0] })).path);
      await expect.poll(() => page.getByRole('alert').innerText()).toMatch(/^Only \d of the/);
      expect(await violations(page)).toEqual([]);
      expect((await ofKind(page, 'card'))[0]!.body.reading).toBeUndefined();
      // The rings can be touched by keys alone.
      await button(page, 'Touch the four rings').click();
      await button(page, 'Move the cross by keys').click();
      await page.keyboard.press('ArrowLeft');
      await page.keyboard.press('Shift+ArrowUp');
      await page.keyboard.press('Enter');
      await page.getByText('Touch the next ring, clockwise.').waitFor();
      await button(page, 'One step back').click();
      await button(page, 'Leave it').click();

      // A sound one is read, and shown over the photograph.
      const shot = { size: 1100, tilt: 7, turn: 4, uneven: 0.1, jpeg: 92 };
      const { photo, path } = await shoot(plan, shot);
      await choose.setInputFiles(path);
      await heading(page, 'What was seen').waitFor();
      await page.getByText(/\d places read, the light falls off by/).waitFor();
      await expect
        .poll(() => page.locator('.swatch-over polygon').count())
        .toBe(2 * plan.places.length);
      await page.getByText('The swatches are kept.').waitFor();
      expect(await violations(page)).toEqual([]);

      // Seen beside foreseen, then accepted: the mixture on the bench is another.
      await page.getByRole('link', { name: 'Compare with what was foreseen' }).click();
      await button(page, 'Accept these curves').waitFor();
      await expect
        .poll(() => page.locator('.swatch-compared > li').count())
        .toBe(plan.places.filter(({ kind }) => kind === 'paint').length);
      await page.getByText(/Half of the swatches now come out within [01]\.\d of/).waitFor();

      await page.setViewportSize(PHONE);
      await page.emulateMedia({ colorScheme: 'dark' });
      expect(await sidewise(page)).toBeLessThanOrEqual(0);
      expect(await violations(page)).toEqual([]);
      await page.setViewportSize(DESKTOP);
      await button(page, 'Accept these curves').click();
      await page.getByText(/have your own curve now/).waitFor();
      await page.goto(harmony);
      await bench(page).getByText('From your own curves').waitFor();
      await expect.poll(() => recipe(page)).not.toBe(before);
      // Undone, it is as it was.
      await page.locator('.notices').getByRole('button', { name: 'Undo' }).click();
      await bench(page).getByText('Foreseen from handbooks').waitFor();
      await expect.poll(() => recipe(page)).toBe(before);

      // A pile that came out otherwise is kept from the bench.
      await page.locator('summary').filter({ hasText: 'It came out wrong' }).first().click();
      await page
        .getByRole('group', { name: /Touch until/ })
        .getByRole('button')
        .first()
        .click();
      await button(page, 'Keep what it came out as').click();
      await heading(page, 'It came out like this').waitFor();
      await page.getByText('As judged by eye').waitFor();
      expect(await violations(page)).toEqual([]);
      // From a photograph instead: white, grey and a swatch for the pile are touched in turn.
      await page.getByLabel('Choose a photograph').setInputFiles(path);
      const surface = page.getByRole('application');
      await surface.locator('img').evaluate((image: HTMLImageElement) => image.decode());
      const pile = plan.places.find(({ kind }) => kind === 'paint')!;
      for (const place of [plan.places[0]!, plan.places[1]!, pile]) {
        const [x, y] = photo.at(place.x, place.y);
        const box = (await surface.boundingBox())!;
        const { width, height } = photo.pixels;
        await surface.click({
          position: { x: (x / width) * box.width, y: (y / height) * box.height },
        });
      }
      await expect.poll(() => page.getByText('As judged by eye').count()).toBe(0);
      await button(page, 'Keep it').click();
      await page.getByText('The pile is kept.').waitFor();
      await page.getByText(/One pile was logged/).waitFor();

      // Measured curves: what is wrong with a file is said; a sound one is told what it is.
      await page.getByRole('link', { name: 'Bring in a file' }).click();
      const file = page.getByLabel('File of measured reflectances');
      const give = (name: string, text: string) =>
        file.setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
      await give('gap.csv', 'name,400,500,600,700\nA,0.1,,0.3,0.4\n');
      await page.getByRole('alert').waitFor();
      const R = (...parts: Part[]) => reflectance(parts);
      const twice = [1, 2].map(() => ({ name: 'A', R: R({ pigment: 'smalt', parts: 1 }) }));
      await give('twice.txt', spectraCgats(twice));
      await page.getByText('Two samples are called "A"').waitFor();
      await give(
        'bench.txt',
        spectraCgats([
          { name: 'Vermilion', R: R({ pigment: 'vermilion', parts: 1 }) },
          {
            name: 'Vermilion 1:4',
            R: R({ pigment: 'vermilion', parts: 1 }, { pigment: 'lead_white', parts: 4 }),
          },
          { name: 'B17', R: R({ pigment: 'malachite', parts: 1 }) },
        ]),
      );
      await page.getByText('2 of 3 samples used').waitFor();
      await page.getByLabel('Paint 1 in “B17”').selectOption({ label: 'Malachite' });
      await page
        .getByLabel('Paint 2 in “Vermilion”', { exact: true })
        .selectOption({ label: 'Vermilion' });
      await button(page, 'Keep these curves').click();
      await page.getByText('Mend the marked rows first').waitFor();
      await page.getByLabel('Paint 2 in “Vermilion”', { exact: true }).selectOption('');
      expect(await violations(page)).toEqual([]);
      await button(page, 'Keep these curves').click();
      await button(page, 'Accept these curves').click();
      await page.getByText(/have your own curve now/).waitFor();

      // And out again, with the same digits.
      await page.getByRole('link', { name: 'bench.txt' }).click();
      await page.evaluate(() => {
        Object.assign(window, { showSaveFilePicker: undefined });
      });
      const leaving = page.waitForEvent('download');
      await button(page, 'As CGATS text').click();
      const out = await (await leaving).createReadStream();
      let text = '';
      for await (const chunk of out) text += chunk;
      expect(text).toContain(R({ pigment: 'malachite', parts: 1 })[10]!.toFixed(5));

      // After a reload everything is there, and on the shelf each says how it is known.
      await go(page, url, 'book/shelf/swatches', 'Your own paints');
      await page.reload();
      await page.getByText(/photographed on .*: \d+ swatches/).waitFor();
      await page.getByRole('link', { name: 'bench.txt' }).waitFor();
      await page.getByText(/One pile was logged/).waitFor();
      expect(await violationsInBoth(page)).toEqual([]);
      await page.setViewportSize(PHONE);
      expect(await sidewise(page)).toBeLessThanOrEqual(0);
      expect(await small(page)).toEqual([]);
      await go(page, url, 'book/shelf/vermilion', 'Vermilion');
      await page.getByText(/^Measured \(.*\), from 2 swatches\./).waitFor();
      expect(await violations(page)).toEqual([]);
      await button(page, 'Put the handbook’s curve back').click();
      await page.getByText(/^From the handbook: a guess/).waitFor();
    });
  });
});
