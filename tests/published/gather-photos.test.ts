import { expect, test } from 'vitest';
import { hueDeg, type Lab } from '../../src/colour/lab.ts';
import type { GatheredColour } from '../../src/harmony/harmony.ts';
import { coloursOf } from '../photo/photographs.ts';
import { describeShared } from '../shared.ts';
import { readMunsell } from './munsell.ts';

const chromaOf = ([, a, b]: Lab) => Math.hypot(a, b);
/** Colours of some chroma whose hue lies between two angles of CIELAB. */
const between = (colours: readonly GatheredColour[], from: number, to: number, least = 15) =>
  colours.filter(({ lab }) => {
    const h = hueDeg(lab) ?? -1;
    return chromaOf(lab) >= least && (from < to ? h >= from && h < to : h >= from || h < to);
  });

const areaOf = (colours: readonly GatheredColour[]) =>
  colours.reduce((sum, { share }) => sum + share, 0);

// Real camera photographs by Ch. Barbin, J. Ansorg, blackcombwhistler07 and others (GPL-2+, from
// Debian's mate-backgrounds); what to look for in each was written down before gathering was.
describeShared('real photographs', () => {
  test('a ladybird of a quarter of a per cent, and the forget-me-nots', async () => {
    const colours = await coloursOf('ladybird-forget-me-nots.jpg');
    const red = between(colours, 20, 60, 50);
    expect(red.length).toBe(1);
    expect(red[0]!.accent).toBe(true);
    expect(red[0]!.share).toBeLessThan(0.005);
    expect(red[0]!.share).toBeGreaterThan(0.001);
    expect(between(colours, 240, 300).length).toBeGreaterThanOrEqual(1);
  });

  test('a marigold is red, gold and green', async () => {
    const colours = await coloursOf('marigold.jpg');
    expect(between(colours, 15, 50, 40).length).toBeGreaterThanOrEqual(1);
    expect(between(colours, 60, 95, 50).length).toBeGreaterThanOrEqual(1);
    expect(between(colours, 100, 150).length).toBeGreaterThanOrEqual(1);
  });

  // “One green from near black to a specular highlight.”
  test('wet grass is one to three greens, a strong one before all, and hardly anything else', async () => {
    const greens = between(await coloursOf('wet-grass.jpg'), 100, 180, 8);
    expect(greens.length).toBeGreaterThanOrEqual(1);
    expect(greens.length).toBeLessThanOrEqual(3);
    expect(greens[0]!.share).toBeGreaterThan(0.5);
    expect(greens[0]!.lab[0]).toBeGreaterThan(45);
    expect(chromaOf(greens[0]!.lab)).toBeGreaterThan(35);
    expect(areaOf(greens)).toBeGreaterThan(0.95);
  });

  // “One hue from scarlet to orange, deep folds, very high chroma.”
  test('a gerbera is scarlet, and one or two oranges of which one is reddish', async () => {
    const colours = await coloursOf('gerbera.jpg');
    const munsell = readMunsell();
    const named = between(colours, 45, 72, 30).map(
      ({ lab }) => munsell.nameOfNotation(munsell.notationOfLab(lab)).level2,
    );
    console.log(`warm colours of the gerbera by ISCC-NBS: ${named.join(', ')}`);
    // The last of them is no orange where the ISCC-NBS blocks call it orange yellow.
    const oranges = named.filter((name) => name !== 'orange yellow');
    expect(oranges.length).toBeLessThanOrEqual(2);
    expect(oranges).toContain('reddish orange');
    const scarlet = between(colours, 30, 45, 60);
    expect(scarlet.length).toBe(1);
    expect(scarlet[0]!.lab[0]).toBeLessThan(45);
    expect(areaOf(between(colours, 30, 80, 60))).toBeGreaterThan(0.95);
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
    // Ochre, and pale yellow.
    expect(between(colours, 55, 85, 30).length).toBe(2);
    expect(colours.some(({ lab }) => lab[0] < 30)).toBe(true);
  });
});
