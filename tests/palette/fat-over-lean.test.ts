import { expect, test } from 'vitest';
import { type CoatRecipe, layerWarnings } from '../../src/palette/layer-rules.ts';
import { partsOf } from './made.ts';

const coat = (parts: Record<string, number>, more: Partial<CoatRecipe> = {}): CoatRecipe => ({
  parts: partsOf(parts),
  film: 'body colour',
  ...more,
});
const rules = (over: CoatRecipe, under: CoatRecipe) =>
  layerWarnings(over, under).map(({ rule }) => rule);
const lean = coat({ yellow_ochre: 1 });
const fat = coat({ yellow_ochre: 1 }, { spareOil: 0.4 });

// Common practice: fat over lean; each coat holds no less spare oil than the one that it is laid on.
test('lean over fat is warned of, fat over lean and like over like are not', () => {
  expect(rules(lean, fat)).toEqual(['lean over fat']);
  expect(rules(fat, lean)).toEqual([]);
  expect(rules(lean, lean)).toEqual([]);
  expect(rules(fat, fat)).toEqual([]);
});
