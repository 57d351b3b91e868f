import { expect, test } from 'vitest';
import { contrastRatio, hidingFilmMm } from '../../src/optics/hiding-power.ts';
import { flatPaint } from './flat.ts';

test('the film that hides is the one whose contrast ratio is 0.98', () => {
  const ochre = { parts: [1], paints: [flatPaint(0.05, 0.3)] };
  const filmMm = hidingFilmMm(ochre);
  expect(contrastRatio({ ...ochre, filmMm })).toBeCloseTo(0.98, 6);
  expect(contrastRatio({ ...ochre, filmMm: 0 })).toBe(0);
  expect(contrastRatio({ ...ochre, filmMm: 1 })).toBeGreaterThan(0.999);
});

test('a black of K alone hides, clear medium never does', () => {
  // 0.8 exp(-2 × 600 X) falls to 1e-8, under which everything is equally black.
  const dye = hidingFilmMm({ parts: [1], paints: [flatPaint(2, 0)] });
  expect(dye).toBeCloseTo(Math.log(0.8e8) / 1200, 5);
  const black = { parts: [1], paints: [flatPaint(2, 0.01)] };
  expect(hidingFilmMm(black)).toBeLessThan(dye);
  expect(contrastRatio({ ...black, filmMm: hidingFilmMm(black) })).toBeCloseTo(0.98, 6);
  expect(hidingFilmMm({ parts: [1], paints: [flatPaint(0, 0)] })).toBe(Number.POSITIVE_INFINITY);
});

// The one constant that turns relative K and S into millimetres was chosen so that lead white, at
// half of titanium white's scattering, hides at about 80 micrometres: an estimate of the trade.
test('a white of half the scattering of titanium white hides at about 80 micrometres', () => {
  const filmMm = hidingFilmMm({ parts: [1], paints: [flatPaint(0.0005, 0.5)] });
  expect(filmMm).toBeGreaterThan(0.07);
  expect(filmMm).toBeLessThan(0.09);
});
