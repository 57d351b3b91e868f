import { readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { violations } from '../tools/axe.ts';
import { entriesOnDisk } from './disk.ts';
import { APP, DESKTOP, describeBrowser, inStudio, PHONE, Served, still } from './open.ts';

const JAY = resolve(import.meta.dirname, '../../samples/jay-feather.jpg');

interface Kept {
  readonly neutral?: { readonly x: number; readonly y: number; readonly grey?: number };
  readonly stated?: string;
  readonly mask?: { readonly file: string };
  readonly gathered: {
    readonly colours: readonly {
      readonly name: string;
      readonly lab: readonly [number, number, number];
      readonly share: number;
      readonly accent: boolean;
      readonly altered?: string;
      readonly asGathered?: readonly number[];
      readonly spotSide?: number;
      readonly sheen?: boolean;
    }[];
    readonly labels: { readonly file: string };
    readonly remarks: readonly string[];
  };
}

/** The specimen's record as it is on disk. */
const inBook = async (page: Page): Promise<Kept> => {
  const records = await entriesOnDisk(page);
  return records.find(({ kind }) => kind === 'specimen')!.body as unknown as Kept;
};

/** A still life under warm light: a ground, a grey card, a burnt-out light, a blue and a red cloth. */
async function stillLife(): Promise<Buffer> {
  const field = async (width: number, height: number, background: string) =>
    sharp({ create: { width, height, channels: 3, background } })
      .png()
      .toBuffer();
  return sharp({ create: { width: 600, height: 400, channels: 3, background: '#6f7a2c' } })
    .composite([
      { input: await field(120, 120, '#b8a583'), left: 40, top: 40 },
      { input: await field(60, 60, '#ffffff'), left: 200, top: 40 },
      { input: await field(200, 280, '#3c5a8c'), left: 300, top: 60 },
      { input: await field(160, 120, '#a03028'), left: 60, top: 220 },
    ])
    .png()
    .toBuffer();
}
/** Places of them, 0…1. */
const CARD = [100 / 600, 100 / 400] as const;
const BURNT = [230 / 600, 70 / 400] as const;
const BLUE = [400 / 600, 200 / 400] as const;

async function bring(page: Page, url: string, buffer: Buffer, name = 'still.png') {
  await page.goto(url);
  const mimeType = 'image/png';
  await page.getByLabel('Choose a photograph').setInputFiles({ name, mimeType, buffer });
  await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
  await expect.poll(() => page.locator('.save-line').innerText()).toBe('Saved in this browser');
}

const surface = (page: Page) => page.getByRole('application');
const openTool = (page: Page, name: string) =>
  page.getByRole('button', { name, exact: true }).click();
const names = (page: Page) => page.locator('.wall').getByRole('button').allInnerTexts();

async function pointOf(page: Page, [x, y]: readonly [number, number]) {
  await surface(page).scrollIntoViewIfNeeded();
  await still(page);
  const box = (await surface(page).boundingBox())!;
  return [box.x + x * box.width, box.y + y * box.height] as const;
}
async function touch(page: Page, place: readonly [number, number]) {
  await page.mouse.click(...(await pointOf(page, place)));
}
async function draw(page: Page, ...places: (readonly [number, number])[]) {
  await page.mouse.move(...(await pointOf(page, places[0]!)));
  await page.mouse.down();
  for (const place of places.slice(1))
    await page.mouse.move(...(await pointOf(page, place)), { steps: 6 });
  await page.mouse.up();
}
/** Moves the marker from the middle, where it begins, by keys: 2 % of the longer edge a step. */
async function steer(page: Page, [across, down]: readonly [number, number]) {
  for (let i = 0; i < Math.abs(across); i++)
    await page.keyboard.press(across < 0 ? 'ArrowLeft' : 'ArrowRight');
  for (let i = 0; i < Math.abs(down); i++)
    await page.keyboard.press(down < 0 ? 'ArrowUp' : 'ArrowDown');
}

const chroma = ([, a, b]: readonly [number, number, number]) => Math.hypot(a, b);
const greenest = ({ gathered: { colours } }: Kept) =>
  colours.filter(({ lab: [L, a, b] }) => a < 0 && b > 15 && L > 20)[0]?.share ?? 0;

describeBrowser('what a painter does upon the photograph', () => {
  const served = new Served();
  let still: Buffer;
  beforeAll(async () => {
    await served.start();
    still = await stillLife();
  });
  afterAll(() => served.stop());

  test.each([
    ['on a desktop, dark', DESKTOP, 'dark'],
    ['on a phone, light', PHONE, 'light'],
  ] as const)(
    'sets the light, rubs out, joins, adds, undoes, and finds it again (%s)',
    async (_, viewport, scheme) =>
      inStudio(viewport, scheme, async (page) => {
        await bring(page, served.url, still);
        const begun = await inBook(page);
        const hung = await names(page);

        // A burnt-out spot is refused with the reason, and nothing changes.
        await openTool(page, 'Light');
        expect(await violations(page)).toEqual([]);
        await touch(page, BURNT);
        await page.getByText(/burnt out: the camera lost/).waitFor();
        expect(await names(page)).toEqual(hung);
        expect(await inBook(page)).toEqual(begun);
        await page.getByRole('button', { name: 'Close', exact: true }).click();

        // The card becomes grey.
        await touch(page, CARD);
        await page.getByText('The light is set right by a spot.').waitFor();
        await expect.poll(async () => (await inBook(page)).neutral?.x).toBeCloseTo(CARD[0], 2);
        const lit = await inBook(page);
        const card = lit.gathered.colours.find(({ lab }) => lab[0] > 50 && lab[0] < 90)!;
        expect(chroma(card.lab)).toBeLessThan(1.5);
        await page.getByRole('button', { name: /^Compare/ }).click();
        expect(await violations(page)).toEqual([]);

        // The ground is rubbed out, the harmony follows.
        await openTool(page, 'Keep');
        await page.getByLabel('Brush').fill('0.06');
        await draw(page, [0.02, 0.03], [0.98, 0.03], [0.95, 0.95], [0.03, 0.95], [0.02, 0.03]);
        await page.getByText(/% of the photograph is kept/).waitFor();
        await expect
          .poll(async () => greenest(await inBook(page)))
          .toBeLessThan(greenest(lit) * 0.75);
        expect(await violations(page)).toEqual([]);
        await page.getByRole('radio', { name: 'Outline' }).check();
        // No drag needed: an outline by its corners.
        for (const corner of [
          [0.08, 0.08],
          [0.86, 0.08],
          [0.86, 0.88],
          [0.08, 0.88],
        ] as const)
          await touch(page, corner);
        await page.getByText('4 corners.').waitFor();
        expect(await violations(page)).toEqual([]);
        await page.getByRole('button', { name: 'Close the outline' }).click();
        await expect.poll(async () => (await inBook(page)).mask).toBeDefined();
        await expect
          .poll(async () => greenest(await inBook(page)))
          .toBeLessThan(greenest(lit) * 0.65);

        // By hand: two joined, one added, one corrected by eye and marked.
        await openTool(page, 'By hand');
        const before = await inBook(page);
        await page.getByRole('button', { name: 'Join', exact: true }).click();
        await expect
          .poll(async () => (await names(page)).length)
          .toBe(before.gathered.colours.length - 1);
        await touch(page, BLUE);
        await expect
          .poll(async () => (await names(page)).length)
          .toBe(before.gathered.colours.length);
        await expect
          .poll(async () =>
            (await inBook(page)).gathered.colours.some(({ spotSide }) => spotSide === 5),
          )
          .toBe(true);
        await page.getByRole('button', { name: 'cooler', exact: true }).click();
        await page.getByText(/: corrected by eye/).waitFor();
        await page.getByLabel(/^Sheen/).check();
        await page.getByLabel('Its name').fill('the jug');
        await page.getByRole('button', { name: 'Rename', exact: true }).click();
        await expect.poll(async () => (await names(page)).includes('the jug')).toBe(true);
        await expect
          .poll(async () =>
            (await inBook(page)).gathered.colours.find(({ name }) => name === 'the jug'),
          )
          .toMatchObject({ sheen: true, altered: expect.stringMatching(/by eye/) });
        expect(await violations(page)).toEqual([]);

        // As it was after a reload.
        const worked = await inBook(page);
        const wall = await names(page);
        await expect
          .poll(() => page.locator('.save-line').innerText())
          .toBe('Saved in this browser');

        // All of it undone, and that is found again too.
        const steps = page.getByRole('button', { name: 'Undo', exact: true });
        let undone = 0;
        while ((await steps.count()) > 0 && undone < 30) {
          await steps.click();
          undone++;
          if (undone === 1) {
            await expect.poll(async () => (await names(page)).includes('the jug')).toBe(false);
          }
        }
        expect(undone).toBe(8);
        await expect.poll(() => names(page)).toEqual(hung);
        await expect.poll(async () => (await inBook(page)).neutral).toBeUndefined();
        await expect.poll(async () => (await inBook(page)).gathered).toEqual(begun.gathered);
        await page.reload();
        await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
        await expect.poll(() => names(page)).toEqual(hung);
        await openTool(page, 'Keep');
        await page.getByText('Everything is kept.').waitFor();
        await openTool(page, 'Light');
        await page.getByText('The light is as the camera gave it.').waitFor();
        expect(worked.gathered.colours).not.toEqual(begun.gathered.colours);
        expect(wall).not.toEqual(hung);
      }),
  );

  test('by keyboard alone, and as it was after a reload', async () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await bring(page, served.url, still);
      const begun = await inBook(page);
      // The marker names and chooses.
      await surface(page).focus();
      await steer(page, [8, 0]);
      await page.getByText(/66 % across, 50 % down: .*blue/).waitFor();
      await page.keyboard.press('Enter');
      await expect.poll(() => page.locator('#bench-heading').innerText()).toMatch(/blue/);
      // The light, by a grey card: from 66 %, 50 % to 16 %, 26 %.
      await page.getByRole('button', { name: 'Light', exact: true }).press('Enter');
      await page.getByRole('radio', { name: /grey card/ }).press(' ');
      await page.getByRole('button', { name: 'Move the marker by keys' }).press('Enter');
      await steer(page, [-25, -8]);
      await page.keyboard.press('Enter');
      await page.getByText('Light and exposure are set right by a grey card.').waitFor();
      await expect.poll(async () => (await inBook(page)).neutral?.grey).toBe(0.18);
      // CIE 015: reflectance 0.18 is L* 49.5.
      const card = (await inBook(page)).gathered.colours.find(({ lab }) => chroma(lab) < 1.5)!;
      expect(Math.abs(card.lab[0] - 49.5)).toBeLessThan(0.7);
      // Rubbing out with the round brush.
      await page.getByRole('button', { name: 'Keep', exact: true }).press('Enter');
      await page.getByRole('button', { name: 'Move the marker by keys' }).press('Enter');
      await page.keyboard.press('Enter');
      await steer(page, [3, 0]);
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await inBook(page)).mask).toBeDefined();
      await page.getByRole('button', { name: 'Undo', exact: true }).press('Enter');
      await page.keyboard.press('Control+z');
      await page.getByText('Everything is kept.').waitFor();
      await page.getByRole('button', { name: 'Keep the middle' }).press('Enter');
      await page.getByText('28 % of the photograph is kept.').waitFor();
      // A spot by hand, in the light as it was set.
      await page.getByRole('button', { name: 'By hand', exact: true }).press('Enter');
      const few = (await names(page)).length;
      await page.getByRole('button', { name: 'Move the marker by keys' }).press('Enter');
      await steer(page, [18, 12]);
      await page.keyboard.press('Enter');
      await expect.poll(async () => (await names(page)).length).toBe(few + 1);
      await page.getByRole('button', { name: 'lighter', exact: true }).press('Enter');
      await page.getByText(/: corrected by eye/).waitFor();
      await expect
        .poll(async () => (await inBook(page)).gathered.colours.some(({ altered }) => altered))
        .toBe(true);
      expect(await violations(page)).toEqual([]);

      const kept = await inBook(page);
      const wall = await names(page);
      expect(kept.gathered).not.toEqual(begun.gathered);
      await page.reload();
      await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
      await expect.poll(() => names(page)).toEqual(wall);
      await page.getByText(/: corrected by eye/).waitFor();
      await openTool(page, 'Light');
      await page.getByText('Light and exposure are set right by a grey card.').waitFor();
      await openTool(page, 'Keep');
      await page.getByText('28 % of the photograph is kept.').waitFor();
      expect(await inBook(page)).toEqual(kept);
      // And a harmony kept from it shows the same.
      await page.getByRole('button', { name: 'Keep this harmony' }).click();
      await page.getByText('This harmony is in the book').waitFor();
      await page.reload();
      await page.getByText('This harmony is in the book').waitFor();
      await expect.poll(() => names(page)).toEqual(wall);
      await page.getByText(/: corrected by eye/).waitFor();
    }));

  test('everything rubbed out is refused with a sentence, one pixel is not', async () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await bring(page, served.url, still);
      const hung = await names(page);
      await openTool(page, 'Keep');
      await page.getByRole('button', { name: 'Keep the middle' }).click();
      await page.getByText('28 % of the photograph is kept.').waitFor();
      await page.getByLabel('Brush').fill('0.2');
      await draw(page, [0.2, 0.4], [0.8, 0.4], [0.8, 0.6], [0.2, 0.6], [0.5, 0.5]);
      await page.getByText(/Everything has been rubbed out/).waitFor();
      expect(await violations(page)).toEqual([]);
      await page.getByRole('button', { name: 'Close', exact: true }).click();
      await page.getByLabel('Brush').fill('0.01');
      await page.getByRole('radio', { name: 'Keep again' }).check();
      await touch(page, BLUE);
      await expect.poll(async () => (await names(page)).length).toBe(1);
      await page
        .getByText(/Only a few pixels|There is one colour in it/)
        .first()
        .waitFor();
      await page.getByRole('button', { name: 'Keep everything' }).click();
      // The book's copy is a JPEG: gathered from it, a trace more can be found than in the file itself.
      await expect.poll(() => names(page)).toEqual(expect.arrayContaining(hung));
    }));

  test('what was see-through stays left out when it is gathered anew', async () =>
    inStudio(DESKTOP, 'light', async (page) => {
      const half = await sharp({
        create: {
          width: 400,
          height: 300,
          channels: 4,
          background: { r: 0, g: 0, b: 0, alpha: 0 },
        },
      })
        .composite([
          {
            input: await sharp(still).resize(200, 300, { fit: 'fill' }).png().toBuffer(),
            left: 0,
            top: 0,
          },
        ])
        .png()
        .toBuffer();
      await bring(page, served.url, half);
      await openTool(page, 'Light');
      await page.getByRole('button', { name: 'Overcast' }).click();
      await page.getByText('The light is taken for: overcast.').waitFor();
      await expect.poll(async () => (await inBook(page)).stated).toBe('overcast');
      for (const { lab } of (await inBook(page)).gathered.colours)
        expect(lab[0]).toBeGreaterThan(15);
      const many = (await inBook(page)).gathered.colours.length;
      await page.reload();
      await page.getByRole('button', { name: /^Fewer/ }).click();
      await expect.poll(async () => (await inBook(page)).gathered.colours.length).toBe(many - 1);
      for (const { lab } of (await inBook(page)).gathered.colours)
        expect(lab[0]).toBeGreaterThan(15);
    }));

  test('cloths are hung one at a time, in room that was kept for them', async () =>
    inStudio(DESKTOP, 'light', async (page) => {
      await page.addInitScript(() => {
        const batches: number[] = [];
        const heights = new Set<number>();
        Object.assign(window, { batches, heights });
        new MutationObserver((records) => {
          const added = records
            .flatMap((record) => [...record.addedNodes])
            .reduce((n, node) => {
              if (!(node instanceof Element)) return n;
              return (
                n +
                (node.matches('[data-hung]') ? 1 : 0) +
                node.querySelectorAll('[data-hung]').length
              );
            }, 0);
          if (added === 0) return;
          batches.push(added);
          heights.add(document.querySelector('.wall')!.getBoundingClientRect().height);
        }).observe(document, { childList: true, subtree: true });
      });
      await bring(page, served.url, still);
      const hung = () => page.locator('.wall [data-hung]').count();
      await expect.poll(hung).toBe((await names(page)).length);
      const { batches, heights } = await page.evaluate(() => {
        const told = window as unknown as { batches: number[]; heights: Set<number> };
        return { batches: told.batches, heights: [...told.heights] };
      });
      expect(Math.max(...batches)).toBe(1);
      expect(heights.length).toBe(1);
    }));

  test('a browser that alters what is read back is told of', async () =>
    inStudio(DESKTOP, 'light', async (page) => {
      // From the disk, at once: the service worker asks for it too, maybe when the page is closing.
      await page.context().route('**/photo.worker*.js', (route) => {
        const file = join(APP, new URL(route.request().url()).pathname);
        // One without frames to copy reads its canvas back.
        const noise = `{
          delete self.VideoFrame;
          const of = OffscreenCanvasRenderingContext2D.prototype;
          const read = of.getImageData;
          of.getImageData = function (...args) {
            const image = read.apply(this, args);
            for (let i = 0; i < image.data.length; i += 28) image.data[i] ^= 1;
            return image;
          };
        }`;
        return route.fulfill({
          contentType: 'text/javascript',
          body: noise + readFileSync(file, 'utf8'),
        });
      });
      await bring(page, served.url, still);
      await page.getByText(/This browser alters the pixels/).waitFor();
      expect((await inBook(page)).gathered.remarks.join()).toMatch(/alters the pixels/);
    }));

  test.each([
    ['an animated file: the first picture, and it says so', 'gif', /only the first is looked at/],
    ['all black', 'black', /is black|There is one colour/],
    ['all blown out', 'white', /blown out/],
    ['all noise', 'noise', null],
    ['a CMYK JPEG', 'cmyk', null],
    ['sixteen bits a channel', 'deep', null],
    ['30000 × 20 pixels', 'panorama', /There is one colour/],
  ])('%s', async (_, kind, remark) =>
    inStudio(DESKTOP, 'light', async (page) => {
      await bring(page, served.url, await odd(kind));
      if (remark) await page.getByText(remark).first().waitFor();
      const { gathered } = await inBook(page);
      expect(gathered.colours.length).toBeGreaterThanOrEqual(1);
      expect(gathered.colours.length).toBeLessThanOrEqual(7);
      // And hands can work upon it.
      await openTool(page, 'By hand');
      await touch(page, [0.5, 0.5]);
      await expect
        .poll(async () => (await inBook(page)).gathered.colours.length)
        .toBe(gathered.colours.length + 1);
    }),
  );
});

/** Photographs that are odd. */
async function odd(kind: string): Promise<Buffer> {
  const plain = (width: number, height: number, background: string) =>
    sharp({ create: { width, height, channels: 3, background } });
  switch (kind) {
    case 'gif': {
      const frames = await Promise.all(
        ['#aa3322', '#2233aa'].map((colour) => plain(80, 60, colour).png().toBuffer()),
      );
      return sharp(frames, { join: { animated: true } })
        .gif({ loop: 0 })
        .toBuffer();
    }
    case 'black':
      return plain(300, 200, '#000').png().toBuffer();
    case 'white':
      return plain(300, 200, '#fff').png().toBuffer();
    case 'noise': {
      let seed = 7;
      const data = Uint8Array.from({ length: 300 * 200 * 3 }, () => {
        seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0;
        return seed >>> 24;
      });
      return sharp(data, { raw: { width: 300, height: 200, channels: 3 } })
        .png()
        .toBuffer();
    }
    case 'cmyk':
      return sharp(JAY).resize(400).toColourspace('cmyk').jpeg().toBuffer();
    case 'deep':
      return sharp(JAY).resize(400).toColourspace('rgb16').png().toBuffer();
    default:
      return plain(30000, 20, '#808080').png().toBuffer();
  }
}
