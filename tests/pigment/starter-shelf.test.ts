import { expect, test } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import { chroma, hueDeg, labOf } from '../../src/colour/lab.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { starterShelf, wholeShelf } from '../../src/pigment/starter-shelf.ts';

const shelf = starterShelf();
const mixed = (parts: Record<string, number>) => {
  const paints = Object.keys(parts).map((id) => shelf.paints.find((p) => p.pigment === id)!.paint);
  return labOf(addSurface(opaque(Object.values(parts), paints, spectrum()), shelf.surface));
};

test('the old studio is in stock, and more pigments are known', () => {
  expect(shelf.paints.length).toBeGreaterThanOrEqual(16);
  expect(wholeShelf().paints.length).toBeGreaterThanOrEqual(26);
  expect(shelf.white).toBe('lead_white');
  expect(shelf.basis).toBe('volume');
});

// Common practice: what every painter has seen happen.
test('white and charcoal black make a cool grey', () => {
  const grey = mixed({ lead_white: 20, charcoal_black: 1 });
  expect(grey[2]).toBeLessThan(-2);
  expect(chroma(grey)).toBeLessThan(8);
});

test('yellow and blue make a green', () => {
  const piles: Record<string, number>[] = [
    { lead_tin_yellow: 2, azurite: 1 },
    { lead_tin_yellow: 4, ultramarine: 1 },
    { yellow_ochre: 4, indigo: 1, lead_white: 4 },
  ];
  for (const parts of piles)
    expect(hueDeg(mixed(parts))).toSatisfy((h: number) => h > 95 && h < 200);
});
