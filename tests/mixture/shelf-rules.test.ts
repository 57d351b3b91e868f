import { expect, test } from 'vitest';
import { avoidedPairs, hazardous, ofFamily } from '../../src/mixture/shelf-rules.ts';
import { wholeShelf } from '../../src/pigment/starter-shelf.ts';
import { invented } from './invented.ts';

const whole = wholeShelf();
const has = (pigment: string) => whole.paints.some((p) => p.pigment === pigment);

// Lead with sulphides of arsenic: Gettens & Stout 1942; Field (as the pigment facts have them).
test('lead white and orpiment never share a pile', () => {
  expect(has('lead_white') && has('orpiment')).toBe(true);
  const pairs = avoidedPairs(whole).map((pair) => [...pair].sort().join(' '));
  expect(pairs).toContain('lead_white orpiment');
  expect(pairs).not.toContain('lead_white madder_lake');
  expect(new Set(pairs).size).toBe(pairs.length);
});

test('blacks and whites are known by facts or by name', () => {
  expect(ofFamily(whole, 'black')).toContain('bone_black');
  expect(ofFamily(whole, 'white')).toContain('lead_white');
  expect(ofFamily(invented, 'black')).toEqual(['black']);
});

test('hazards from a level up', () => {
  expect(hazardous(whole, 'toxic')).toContain('lead_white');
  expect(hazardous(whole, 'toxic')).not.toContain('yellow_ochre');
  expect(hazardous(whole, 'very_toxic')).not.toContain('lead_white');
  expect(hazardous(invented, 'toxic')).toEqual([]);
});
