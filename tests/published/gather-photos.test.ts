import { resolve } from 'node:path';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { hueDeg, type Lab } from '../../src/colour/lab.ts';
import { gather } from '../../src/harmony/gather.ts';
import type { GatheredColour } from '../../src/harmony/harmony.ts';
import { readPixels } from '../photo/read.ts';
import { describeShared, SHARED } from '../shared.ts';

async function coloursOf(name: string, width?: number): Promise<readonly GatheredColour[]> {
  const pixels = await readPixels(resolve(SHARED, 'photos', name), width);
  const result = gather(pixels);
  if (!result.ok) throw new Error(result.fault.code);
  return result.value.colours;
}

const chromaOf = ([, a, b]: Lab) => Math.hypot(a, b);
/** Colours of some chroma whose hue lies between two angles of CIELAB. */
const between = (colours: readonly GatheredColour[], from: number, to: number, least = 15) =>
  colours.filter(({ lab }) => {
    const h = hueDeg(lab) ?? -1;
    return chromaOf(lab) >= least && (from < to ? h >= from && h < to : h >= from || h < to);
  });

// Real camera photographs by Ch. Barbin, J. Ansorg, blackcombwhistler07 and others (GPL-2+, from
// Debian's mate-backgrounds); what to look for in each was written down before gathering was.
describeShared('real photographs', () => {
  test('a ladybird of a quarter of a per cent, and the forget-me-nots', async () => {
    const colours = await coloursOf('ladybird-forget-me-nots.jpg');
    const red = between(colours, 20, 60, 50);
    expect(red.length).toBe(1);
    expect(red[0]!.accent).toBe(true);
    expect(red[0]!.share).toBeLessThan(0.005);
    expect(between(colours, 240, 300).length).toBeGreaterThanOrEqual(1);
  });

  test('a marigold is red, gold and green', async () => {
    const colours = await coloursOf('marigold.jpg');
    expect(between(colours, 15, 50, 40).length).toBeGreaterThanOrEqual(1);
    expect(between(colours, 60, 95, 50).length).toBeGreaterThanOrEqual(1);
    expect(between(colours, 100, 150).length).toBeGreaterThanOrEqual(1);
  });

  test('wet grass is at most three greens', async () => {
    expect(between(await coloursOf('wet-grass.jpg'), 100, 180, 8).length).toBeLessThanOrEqual(3);
  });

  test('a gerbera is at most two oranges', async () => {
    expect(between(await coloursOf('gerbera.jpg'), 45, 72, 30).length).toBeLessThanOrEqual(2);
  });

  test('dune grass is straw and green against two blues', async () => {
    const colours = await coloursOf('dune-grass.jpg');
    expect(between(colours, 230, 290).length).toBe(2);
    expect(between(colours, 70, 90, 30).length).toBeGreaterThanOrEqual(1);
    expect(between(colours, 90, 140).length).toBeGreaterThanOrEqual(1);
  });

  test('autumn leaves keep their red accent and the dark ground', async () => {
    const colours = await coloursOf('autumn-leaves.jpg');
    expect(between(colours, 30, 50, 55).length).toBe(1);
    expect(colours.some(({ lab }) => lab[0] < 30)).toBe(true);
  });

  // The others, whose things run into each other, still change between sizes.
  test('a marigold gives the same colours at 1 and at 4 megapixels', async () => {
    const large = await coloursOf('marigold.jpg');
    const small = await coloursOf('marigold.jpg', 1265);
    expect(small.length).toBe(large.length);
    for (const c of large)
      expect(Math.min(...small.map((s) => deltaE00(s.lab, c.lab)))).toBeLessThan(2);
  });
});
