import { expect, test } from 'vitest';
import { factsOf, isToxic } from '../../src/palette/pigment-lookup.ts';
import { isTempered, toolsOf } from '../../src/palette/tool-groups.ts';
import { PIGMENTS } from '../../src/pigment/pigment-facts.ts';

// The hazard sentences follow the classes of Regulation (EC) 1272/2008 (general wording, from memory).
const METAL = { lead: /^A lead compound/, mercury: /^A mercury/, arsenic: /^An arsenic/ } as const;

test.each(PIGMENTS.map((facts) => [facts.id, facts] as const))('tools of %s', (id, facts) => {
  const { level, sentence } = facts.hazard;
  const metal = (Object.keys(METAL) as (keyof typeof METAL)[]).find((name) =>
    METAL[name].test(sentence),
  );
  expect(toolsOf(id, level)).toBe(metal ?? 'shared');
  // No toxic pigment shares the slab.
  expect(isToxic(level)).toBe(metal !== undefined);
});

test('a toxic pigment of the studio’s own has tools of its own', () => {
  expect(toolsOf('own:x', 'toxic')).toBe('own');
});

test('smalt, azurite and malachite are tempered, not ground', () => {
  const tempered = PIGMENTS.map(({ id }) => id).filter(isTempered);
  expect(tempered.toSorted()).toEqual(['azurite', 'malachite', 'smalt']);
});

test('a paint is known by its id, or by a name of ours within its name', () => {
  expect(factsOf('lead_white#3')?.id).toBe('lead_white');
  expect(factsOf('Cremnitz White (lot 2)')?.id).toBe('lead_white');
  expect(factsOf('Lead-tin yellow')?.id).toBe('lead_tin_yellow');
  expect(factsOf('Meadow green')).toBeNull();
  expect(factsOf('own:vermilion')).toBeNull();
});
