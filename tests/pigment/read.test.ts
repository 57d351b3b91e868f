import { expect, test } from 'vitest';
import { spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { readShelf } from '../../src/pigment/read.ts';
import { describeShared, readShared } from '../shared.ts';

describeShared('the reference shelves', () => {
  // README of the reference data, worked example.
  test('1 part yellow ochre and 4 parts titanium white of the acrylic shelf', () => {
    const shelf = readShelf(readShared('reference/artist-ks-rit2005.csv'), { name: 'acrylics' });
    if (!shelf.ok) throw new Error(shelf.fault.code);
    expect(shelf.value.paints).toHaveLength(27);
    expect(shelf.value.white).toBe('Titanium white');
    const paint = (name: string) => shelf.value.paints.find((p) => p.pigment === name)!.paint;
    const R = opaque([1, 4], [paint('Yellow ochre'), paint('Titanium white')], spectrum());
    const [L, a, b] = labOf(addSurface(R, shelf.value.surface));
    expect(Math.hypot(L - 84.02, a - 5.33, b - 27.3)).toBeLessThan(0.2);
  });

  test('1 part bone black and 4 parts titanium white of the oil shelf, its 380 and 390 carried flat', () => {
    const shelf = readShelf(readShared('reference/oil-ks-delft.csv'), { name: 'oils' });
    if (!shelf.ok) throw new Error(shelf.fault.code);
    expect(shelf.value.paints).toHaveLength(10);
    expect(shelf.value.basis).toBe('mass');
    expect(shelf.value.remarks.join(' ')).toContain('380');
    const paint = (name: string) => shelf.value.paints.find((p) => p.pigment === name)!.paint;
    const R = opaque([1, 4], [paint('Bone black'), paint('Titanium white')], spectrum());
    const [L, a, b] = labOf(addSurface(R, shelf.value.surface));
    expect(Math.hypot(L - 64.3, a + 0.1, b + 5.39)).toBeLessThan(0.2);
  });
});
