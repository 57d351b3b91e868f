import { mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import sharp from 'sharp';
import { ensureChromium } from './chromium.ts';
import { DESKTOP, PHONE, Served, Studio } from './studio.ts';

/** Makes the README's pictures from the running app, so that they stay true. */
const ROOT = resolve(import.meta.dirname, '../..');
const FOLDER = resolve(ROOT, 'samples/pictures');

if (ensureChromium() === null) throw new Error('The pictures need Chromium.');
mkdirSync(FOLDER, { recursive: true });
const served = new Served();
await served.start();

for (const [name, viewport, width] of [
  ['harmony-desktop', DESKTOP, 900],
  ['harmony-phone', PHONE, 300],
] as const) {
  const studio = new Studio();
  const page = await studio.open(viewport);
  await page.goto(served.url);
  await page
    .getByLabel('Choose a photograph')
    .setInputFiles(resolve(ROOT, 'samples/jay-feather.jpg'));
  await page.getByRole('img', { name: /mixed into one pile/ }).waitFor();
  await page.waitForTimeout(1500);
  const picture = await page.screenshot();
  await sharp(picture)
    .resize(width)
    .png({ palette: true, colours: 200 })
    .toFile(resolve(FOLDER, `${name}.png`));
  await studio.discard();
}
await served.stop();
