import { expect, test } from 'vitest';
import { temperatureOf, warmCool } from '../../src/colour/appearance.ts';
import { labOfLCh } from '../../src/colour/lab.ts';

// Ou, Luo, Woodcock, Wright, Color Res. Appl. 29 (2004) 232: the warm pole is hue 50°, the cool one 230°.
test.each([
  [10, 'warm'],
  [50, 'warm'],
  [90, 'warm'],
  [190, 'cool'],
  [230, 'cool'],
  [270, 'cool'],
  // Greens and purples lie across the axis.
  [140, 'neutral'],
  [320, 'neutral'],
] as const)('a colour of hue %d° is %s', (hueDeg, word) => {
  for (const C of [10, 40]) expect(temperatureOf(labOfLCh(55, C, hueDeg))).toBe(word);
});

test('a grey is neither warm nor cool, and scores −0.5', () => {
  expect(temperatureOf([55, 0, 0])).toBe('neutral');
  expect(warmCool([55, 0, 0])).toBe(-0.5);
});
