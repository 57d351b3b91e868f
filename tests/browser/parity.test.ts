import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { gather } from '../../src/harmony/gather.ts';
import { hasShared, SHARED } from '../shared.ts';
import { BROAD, widePng } from '../tools/gamut.ts';
import { Served, Studio } from '../tools/studio.ts';
import { onDisk } from './disk.ts';
import { expectAlike, type GatheredColour, gatheredOf, inNode } from './gathered.ts';
import { describeBrowser } from './open.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const JAY = join(ROOT, 'samples/jay-feather.jpg');

declare global {
  interface Window {
    /** How many jobs its worker for photographs has answered. */
    answers?: number;
  }
}

/** Runs in a page before the app. */
function noteAnswers(): void {
  window.answers = 0;
  window.Worker = class extends Worker {
    constructor(...given: ConstructorParameters<typeof Worker>) {
      super(...given);
      if (String(given[0]).includes('photo'))
        this.addEventListener('message', ({ data }) => {
          if (data?.kind === 'value') window.answers = (window.answers ?? 0) + 1;
        });
    }
  };
}

/** What the browser gathers from a file. */
async function inBrowser(
  page: Page,
  url: string,
  path: string,
  choose = () => page.getByLabel('Choose a photograph').setInputFiles(path),
): Promise<readonly GatheredColour[]> {
  await page.goto(`${url}#/walk`);
  await choose();
  await page.waitForURL(/#\/harmony\//);
  await page.getByRole('button', { name: 'Keep this harmony' }).waitFor();
  const id = await page.evaluate(() => location.hash.split('/')[2]!);
  return gatheredOf(await page.evaluate(onDisk, { table: 'records', key: id }));
}

describeBrowser('the same file gives the same harmony in Node and in Chromium', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kingcup-parity-'));
  const file = (name: string) => join(folder, name);
  const served = new Served();
  const studio = new Studio();
  let page: Page;

  beforeAll(async () => {
    await sharp(JAY).resize(900).png().toFile(file('jay.png'));
    await sharp(JAY).resize(900).webp({ lossless: true }).toFile(file('jay.webp'));
    await sharp(JAY)
      .resize(900, 640)
      .withMetadata({ orientation: 6 })
      .jpeg()
      .toFile(file('turned.jpg'));
    await sharp(JAY)
      .resize(600, 400)
      .ensureAlpha()
      .composite([
        {
          input: Buffer.from([0, 0, 0, 255]),
          raw: { width: 1, height: 1, channels: 4 },
          tile: true,
          blend: 'dest-in',
        },
      ])
      .png()
      .toFile(file('opaque.png'));
    // Four fields, two of them beyond sRGB: the red, the green of Display P3 itself.
    const fields = [
      [255, 0, 0],
      [0, 255, 0],
      [90, 90, 90],
      [200, 180, 40],
    ];
    const rgb = new Uint8Array(200 * 200 * 3);
    for (let i = 0; i < 200 * 200; i++)
      rgb.set(fields[(i % 200 < 100 ? 0 : 1) + (i < 200 * 100 ? 0 : 2)]!, i * 3);
    writeFileSync(file('wide.png'), await widePng(rgb, 200, 200));
    writeFileSync(file('broad.png'), await widePng(rgb, 200, 200, BROAD));
    await served.start();
    page = await studio.open();
  });
  afterAll(async () => {
    await studio.discard();
    await served.stop();
    rmSync(folder, { recursive: true });
  });

  const files = [JAY, 'jay.png', 'jay.webp', 'turned.jpg', 'opaque.png'];
  if (hasShared)
    files.push(join(SHARED, 'photos/marigold.jpg'), join(SHARED, 'photos/gerbera.jpg'));
  test.each(files)('%s', async (name) => {
    const path = resolve(folder, name);
    expect(await inBrowser(page, served.url, path)).toEqual(await inNode(path));
  });

  // The worker rehearses while a painter looks for a photograph (workers/warm-up.ts).
  test.each([
    ['while the worker rehearses', false],
    ['after it has rehearsed', true],
  ])('chosen %s', async (_, isRehearsed) => {
    await page.addInitScript(noteAnswers);
    await page.reload();
    const choose = async () => {
      const chooser = page.waitForEvent('filechooser');
      await page.getByText('Choose a photograph').click();
      const asked = await chooser;
      if (isRehearsed) await page.waitForFunction(() => (window.answers ?? 0) > 0);
      await asked.setFiles(JAY);
    };
    expect(await inBrowser(page, served.url, JAY, choose)).toEqual(await inNode(JAY));
  });

  test('every pixel of 17 megapixels is read, not of a smaller copy', async () => {
    await sharp(JAY).resize(4880, 3486, { fit: 'fill' }).jpeg().toFile(file('large.jpg'));
    const { data, info } = await sharp(file('large.jpg'))
      .ensureAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    const { width, height } = info;
    const all = gather({ width, height, data: new Uint8ClampedArray(data), space: 'srgb' });
    const expected = all.ok ? all.value.colours.map(({ lab, share }) => ({ lab, share })) : [];
    expect(await inBrowser(page, served.url, file('large.jpg'))).toEqual(expected);
  });

  test.each(['wide.png', 'broad.png'])(
    'a profile of its own, %s: as many colours, each within 1, shares within 0.02',
    async (name) => {
      // The browser converts by the profile, we take Display P3 as it is defined: last digits differ.
      expectAlike(await inBrowser(page, served.url, file(name)), await inNode(file(name)));
    },
  );

  test('colours beyond sRGB are kept', async () => {
    // Display P3's red: CIELAB D65 chroma 120 and more, where sRGB's red has 104.6 (computed from the primaries
    // of SMPTE RP 431-2 and IEC 61966-2-1).
    const chromas = (await inNode(file('wide.png'))).map(({ lab: [, a, b] }) => Math.hypot(a, b));
    expect(Math.max(...chromas)).toBeGreaterThan(115);
  });
});
