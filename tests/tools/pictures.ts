import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { ensureChromium } from './chromium.ts';
import { DESKTOP, PHONE, Served, Studio } from './studio.ts';

/** Makes the README's pictures from the running app and its sample book, so that they stay true. */
const FOLDER = resolve(import.meta.dirname, '../../samples/pictures');
/** Longest that a picture may be, in bytes. */
const MOST = 200_000;

interface Shown {
  readonly name: string;
  /** Where it is; on a phone perhaps elsewhere. */
  readonly address: string;
  readonly onPhone?: string;
  /** What must stand there before the picture is taken. */
  readonly ready: (page: Page) => Promise<unknown>;
}

const SHOWN: readonly Shown[] = [
  {
    name: 'harmony',
    address: '#/harmony/sample-harmony-kingcup',
    ready: (page) =>
      page
        .getByRole('img', { name: /mixed into one pile/ })
        .first()
        .waitFor(),
  },
  {
    name: 'drapery',
    address: '#/drapery/sample-drapery-miller',
    ready: async (page) => {
      await page.getByText('This drapery is in the book').waitFor();
      await page.getByText('Working out the folds…').waitFor({ state: 'hidden' });
    },
  },
  {
    name: 'palette',
    address: '#/palette/sample-palette-sluice',
    ready: (page) => page.getByRole('link', { name: 'Morning sheet' }).waitFor(),
  },
  {
    name: 'sheet',
    address: '#/palette/sheet/2025-09-15',
    ready: (page) => page.getByText('Prepare, in this order').first().waitFor(),
  },
  {
    name: 'book',
    address: '#/book/sample-harmony-mill-pond',
    onPhone: '#/book',
    ready: (page) => page.getByText('Pond after sunset').first().waitFor(),
  },
];

/** Where a page is looked at from, so that what matters is in the picture. */
const FOCUS: Readonly<Record<string, string>> = { palette: '.pal-palette', sheet: '.pal-paper' };

if (ensureChromium() === null) throw new Error('The pictures need Chromium.');
mkdirSync(FOLDER, { recursive: true });
for (const old of readdirSync(FOLDER)) rmSync(resolve(FOLDER, old));
const served = new Served();
await served.start();

for (const [device, viewport, width] of [
  ['desktop', DESKTOP, 900],
  ['phone', PHONE, 300],
] as const) {
  const studio = new Studio();
  const page = await studio.open(viewport);
  await page.goto(served.url);
  await page.getByRole('button', { name: 'Look through the sample book' }).click();
  await page.getByText(/^Brought in/).waitFor();
  await page.getByRole('button', { name: 'Close' }).click();
  for (const { name, address, onPhone, ready } of SHOWN) {
    const where = device === 'phone' && onPhone ? onPhone : address;
    await page.evaluate((to) => {
      location.hash = to;
    }, where);
    await ready(page);
    // Cloths and piles are painted a little after their words.
    await page.waitForTimeout(6000);
    const focus = FOCUS[name];
    if (focus)
      await page
        .locator(focus)
        .first()
        .evaluate((one) => one.scrollIntoView());
    await page.waitForTimeout(500);
    const { size } = await sharp(await page.screenshot())
      .resize(width)
      .png({ palette: true, colours: 192 })
      .toFile(resolve(FOLDER, `${name}-${device}.png`));
    console.error(`${name}-${device}.png ${Math.round(size / 1000)} kB`);
    if (size > MOST) throw new Error(`${name}-${device}.png is too large`);
  }
  await studio.discard();
}
await served.stop();
