import { expect, test } from 'vitest';
import { type CoatRecipe, fatnessOf, layerWarnings } from '../../src/palette/layer-rules.ts';
import { partsOf } from './made.ts';

const coat = (
  film: CoatRecipe['film'],
  parts: Record<string, number>,
  more: Partial<CoatRecipe> = {},
): CoatRecipe => ({ film, parts: partsOf(parts), ...more });

test('a thick oily film is fatter than a thin one of the same paint', () => {
  const thin = coat('body colour', { yellow_ochre: 1 }, { spareOil: 0.2 });
  const thick = coat('impasto', { yellow_ochre: 1 }, { spareOil: 0.2 });
  expect(fatnessOf(thick)).toBeGreaterThan(fatnessOf(thin));
  expect(layerWarnings(thin, thick).map(({ rule }) => rule)).toEqual(['lean over fat']);
});
