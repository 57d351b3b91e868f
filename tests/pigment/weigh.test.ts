import { describe, expect, test } from 'vitest';
import { pigmentGrind } from '../../src/pigment/pigment-grind.ts';

describe('a studio figure of its own', () => {
  test('is preferred to the handbook', () => {
    const found = pigmentGrind('azurite', { oil: 26 });
    expect(found.ok && found.value.oil).toBe(26);
    expect(found.ok && found.value.density).toBe(3.8);
  });
  test('makes an unknown pigment weighable', () => {
    expect(pigmentGrind('own:moss').ok).toBe(false);
    expect(pigmentGrind('own:moss', { density: 2.5 }).ok).toBe(false);
    expect(pigmentGrind('own:moss', { density: 2.5, oil: 40 }).ok).toBe(true);
  });
});
