import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { crc32 } from 'node:zlib';
import sharp, { type Color } from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { expectRefusal, kingcup, SAMPLES, scratch } from './run.ts';

const JAY = join(SAMPLES, 'jay-feather.jpg');
const folder = scratch();
const file = (name: string) => join(folder, name);
/** The jay small, for what does not hang on its size. */
const SMALL = file('small.png');
beforeAll(() => sharp(JAY).resize(350, 250).png().toFile(SMALL));

/** The harmony of one photograph, as the JSON says it. */
async function gathered(path: string, ...options: string[]) {
  const { status, stdout, stderr } = await kingcup('gather', path, '--json', ...options);
  expect(stderr, path).not.toMatch(/\n\s+at /);
  expect(status, stderr).toBe(0);
  const { photos } = JSON.parse(stdout);
  expect(photos).toHaveLength(1);
  return photos[0];
}

const plain = (width: number, height: number, background: Color) =>
  sharp({ create: { width, height, channels: 4, background } });

describe('gather', () => {
  test('writes one JSON document in the form that the design promises', async () => {
    const photo = await gathered(JAY);
    expect(photo).toMatchObject({ photo: JAY, width: 1400, height: 1000 });
    expect(photo.colours.length).toBeGreaterThanOrEqual(1);
    expect(photo.colours.length).toBeLessThanOrEqual(7);
    let sum = 0;
    for (const { name, hex, lab, share, ladder } of photo.colours) {
      expect(name).toMatch(/[a-z]/);
      expect(hex).toMatch(/^#[0-9a-f]{6}$/);
      expect(lab).toHaveLength(3);
      expect(ladder.map(({ step }: { step: string }) => step)).toEqual([...LADDER_STEPS]);
      const values = ladder.map((step: { lab: number[] }) => step.lab[0]);
      expect(values).toEqual([...values].sort((a, b) => b - a));
      sum += share;
    }
    expect(sum).toBeCloseTo(1, 6);
  });

  test('the same photograph gives the same harmony to the last digit', async () => {
    const { stdout } = await kingcup('gather', SMALL, '--json');
    expect(JSON.parse(stdout).photos).toHaveLength(1);
    expect((await kingcup('gather', SMALL, '--json')).stdout).toBe(stdout);
  });

  test.each([1, 2, 3, 4, 5, 6, 7])('gives %i colours on request', async (count) => {
    expect((await gathered(SMALL, '--colours', String(count))).colours).toHaveLength(count);
  });

  test('several photographs come in one document, in order', async () => {
    const names = ['rowan-branch', 'jay-feather', 'lichened-wall'];
    const paths = names.map((name) => file(`${name}.jpg`));
    for (const [i, name] of names.entries())
      await sharp(join(SAMPLES, `${name}.jpg`))
        .resize(200)
        .toFile(paths[i]!);
    const { stdout, stderr, status } = await kingcup('gather', ...paths, '--json');
    expect(status).toBe(0);
    expect(stderr.match(/^\d of 3: .*$/gm)).toHaveLength(3);
    expect(JSON.parse(stdout).photos.map(({ photo }: { photo: string }) => photo)).toEqual(paths);
  });

  test('without --json it is a table for a person', async () => {
    const { stdout, status } = await kingcup('gather', JAY);
    expect(status).toBe(0);
    expect(stdout).toMatch(/jay-feather\.jpg, 1400 × 1000/);
    expect(stdout).toMatch(/%/);
  });

  test('--help says what it takes', async () => {
    expect((await kingcup('gather', '--help')).stdout).toMatch(/--colours N/);
    expect((await kingcup('--help')).stdout).toMatch(/gather/);
  });

  test.each(['jpeg', 'png', 'webp', 'tiff', 'avif'] as const)('reads %s', async (format) => {
    const path = file(`jay.${format}`);
    const effort = format === 'avif' ? { effort: 0 } : {};
    await sharp(SMALL)
      .toFormat(format, { quality: 90, ...effort })
      .toFile(path);
    expect((await gathered(path)).colours.length).toBeGreaterThanOrEqual(3);
  });

  test('turns a photograph once, as its EXIF says', async () => {
    const path = file('turned.jpg');
    await sharp(JAY).resize(350, 250).withMetadata({ orientation: 6 }).jpeg().toFile(path);
    expect(await gathered(path)).toMatchObject({ width: 250, height: 350 });
  });

  describe('--neutral sets the light right by a spot', () => {
    beforeAll(async () => {
      // A grey card and a blue field under lamp-light, the sun's own white burnt out, and a black corner.
      const field = (width: number, height: number, colour: Color) =>
        plain(width, height, colour).png().toBuffer();
      await plain(400, 300, '#8a6a40')
        .composite([
          { input: await field(160, 200, '#b4a07a'), left: 20, top: 20 },
          { input: await field(60, 60, '#ffffff'), left: 300, top: 20 },
          { input: await field(60, 60, '#030202'), left: 300, top: 120 },
          { input: await field(60, 60, '#d01010'), left: 300, top: 220 },
        ])
        .png()
        .toFile(file('lamp.png'));
      await sharp(file('lamp.png'))
        .rotate(-90)
        .withMetadata({ orientation: 6 })
        .toFile(file('lamp-turned.png'));
    });
    test('the card becomes grey, and the JSON says by what', async () => {
      expect((await gathered(file('lamp.png'))).neutral).toBeUndefined();
      const photo = await gathered(file('lamp.png'), '--neutral', '100,120');
      expect(photo.neutral).toMatchObject({ x: 100, y: 120, side: 5 });
      // #b4a07a, by IEC 61966-2-1 and CIE 015.
      expect(photo.neutral.lab[0]).toBeCloseTo(66.71, 1);
      const card = photo.colours.find(
        ({ lab: [, a, b] }: { lab: number[] }) => Math.hypot(a!, b!) < 0.2,
      );
      expect(card.share).toBeCloseTo((160 * 200) / (400 * 300), 1);
    });

    test('pixels are those of the upright photograph', async () => {
      const turned = await gathered(file('lamp-turned.png'), '--neutral', '100,120');
      expect(turned).toMatchObject({ width: 400, height: 300 });
      expect(turned.colours).toEqual(
        (await gathered(file('lamp.png'), '--neutral', '100,120')).colours,
      );
    });

    test.each([
      ['320,40', /burnt out/],
      ['320,140', /too dark/],
      ['320,240', /strongly coloured/],
      ['400,10', /outside the photograph/],
      ['-1,10', /whole pixels/],
      ['1.5,10', /whole pixels/],
      ['10', /2 numbers/],
      ['here', /2 numbers/],
    ])('%s is refused', async (spot, sentence) => {
      expectRefusal(
        await kingcup('gather', file('lamp.png'), `--neutral=${spot}`, '--json'),
        sentence,
      );
    });

    test('of several photographs, all are set by it or none is written', async () => {
      expectRefusal(
        await kingcup('gather', file('lamp.png'), JAY, '--neutral', '600,600', '--json'),
        /lamp\.png: .*outside/,
      );
    });
  });

  describe('works on what is odd', () => {
    beforeAll(async () => {
      await plain(1, 1, '#7a5230').png().toFile(file('one.png'));
      await plain(300, 200, '#7a5230').png().toFile(file('flat.png'));
      await sharp(SMALL).greyscale().jpeg().toFile(file('grey.jpg'));
      await plain(400, 300, { r: 0, g: 0, b: 0, alpha: 0 })
        .composite([{ input: await plain(200, 150, '#2f6f8f').png().toBuffer() }])
        .png()
        .toFile(file('partly.png'));
      await plain(300, 200, '#000000').png().toFile(file('black.png'));
      await plain(300, 200, '#ffffff').png().toFile(file('white.png'));
      await plain(30000, 20, '#808080').png().toFile(file('panorama.png'));
      await plain(11000, 9100, '#55606a').jpeg().toFile(file('hundred.jpg'));
      await sharp(SMALL).toColourspace('cmyk').jpeg().toFile(file('cmyk.jpg'));
      await sharp(SMALL).toColourspace('rgb16').png().toFile(file('deep.png'));
    });

    test.each([
      ['one.png', 1],
      ['flat.png', 1],
      ['black.png', 1],
      ['white.png', 1],
      ['panorama.png', 1],
    ])('%s has one colour', async (name, count) => {
      expect((await gathered(file(name))).colours).toHaveLength(count);
    });

    test('one by one pixel keeps its colour', async () => {
      // IEC 61966-2-1 and CIE 015: #7a5230 under D65, computed with culori.
      const [{ lab }] = (await gathered(file('one.png'))).colours;
      expect(lab[0]).toBeCloseTo(38.9, 0);
    });

    test('a grey photograph has greys only', async () => {
      const { colours } = await gathered(file('grey.jpg'));
      expect(colours.length).toBeGreaterThanOrEqual(1);
      for (const { lab } of colours) expect(Math.hypot(lab[1], lab[2])).toBeLessThan(2);
    });

    test('what is transparent is not looked at', async () => {
      const { colours } = await gathered(file('partly.png'));
      expect(colours).toHaveLength(1);
      expect(colours[0].hex).toBe('#2f6f8f');
    });

    test('a hundred megapixels are looked at in a smaller copy, and it says so', async () => {
      const { status, stdout, stderr } = await kingcup('gather', file('hundred.jpg'), '--json');
      expect(status).toBe(0);
      expect(stderr).toMatch(/100 megapixels/);
      expect(JSON.parse(stdout).photos[0]).toMatchObject({ width: 11000, height: 9100 });
      expect(JSON.parse(stdout).photos[0].colours).toHaveLength(1);
    });

    test.each(['cmyk.jpg', 'deep.png'])('%s gives what its plain twin gives', async (name) => {
      expect((await gathered(file(name))).colours.length).toBeGreaterThanOrEqual(3);
    });
  });

  describe('refuses with one plain sentence', () => {
    beforeAll(async () => {
      writeFileSync(file('words.jpg'), 'this is no picture');
      writeFileSync(file('empty.jpg'), '');
      const jay = readFileSync(JAY);
      writeFileSync(file('half.jpg'), jay.subarray(0, jay.length >> 1));
      const png = await sharp(JAY).resize(300).png().toBuffer();
      writeFileSync(file('half.png'), png.subarray(0, png.length >> 1));
      const webp = await sharp(JAY).resize(300).webp().toBuffer();
      writeFileSync(file('half.webp'), webp.subarray(0, webp.length >> 1));
      const avif = await sharp(JAY).resize(300).avif({ effort: 0 }).toBuffer();
      writeFileSync(file('half.avif'), avif.subarray(0, avif.length >> 1));
      const heic = Buffer.alloc(64);
      heic.writeUInt32BE(24, 0);
      heic.write('ftypheic', 4, 'latin1');
      heic.write('mif1heic', 16, 'latin1');
      writeFileSync(file('phone.heic'), heic);
      await plain(64, 64, { r: 9, g: 9, b: 9, alpha: 0 }).png().toFile(file('clear.png'));
      // The size in the header of a PNG counts; its 201 million pixels need not be there.
      const huge = await plain(64, 64, '#55606a').png().toBuffer();
      huge.writeUInt32BE(20_100, 16);
      huge.writeUInt32BE(10_000, 20);
      huge.writeUInt32BE(crc32(huge.subarray(12, 29)), 29);
      writeFileSync(file('huge.png'), huge);
    });

    test.each([
      ['words.jpg', /not a photograph/],
      ['empty.jpg', /empty/],
      ['half.jpg', /breaks off/],
      ['half.png', /breaks off/],
      ['half.webp', /breaks off/],
      ['half.avif', /breaks off/],
      ['phone.heic', /HEIC.*JPEG/],
      ['clear.png', /transparent/],
      ['huge.png', /201 megapixels/],
      ['missing.jpg', /no such file/],
    ])('%s', async (name, sentence) => {
      expectRefusal(await kingcup('gather', file(name), '--json'), sentence);
    });

    test('if one of several fails, nothing is written for the others', async () => {
      expectRefusal(
        await kingcup('gather', SMALL, file('words.jpg'), '--json'),
        /words\.jpg: .*not a photo/,
      );
    });

    test.each([
      [['--colours', '0'], /1 to 7/],
      [['--colours', '8'], /1 to 7/],
      [['--colours', '2.5'], /1 to 7/],
      [['--colours', 'many'], /1 to 7/],
      [['--colours'], /colours/],
      [['--shade'], /--shade/],
    ])('options %j', async (options, sentence) => {
      expectRefusal(await kingcup('gather', JAY, ...options), sentence);
    });

    test('no photograph, and no such verb', async () => {
      expectRefusal(await kingcup('gather'), /at least one photograph/);
      expectRefusal(await kingcup('squint'), /no verb “squint”/);
    });
  });
});
