import { describe, expect, test } from 'vitest';
import { type Lab, labOfLCh } from '../../src/colour/lab.ts';
import { kindOf } from '../../src/harmony/period-family.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import { ownPaint, STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';

describe('families by their hue bands', () => {
  // The sheet names these as its check values.
  test.each(['vermilion', 'carmine_lake', 'madder_lake'])('%s counts as red, not brown', (id) => {
    expect(kindOf(masstone(ownPaint(id)!.paint, STARTER_SURFACE)).family).toBe('red');
  });

  test('a white that the painter declares is white in the shadow too', () => {
    expect(kindOf([60, 0, 4]).family).toBe('grey');
    expect(kindOf([60, 0, 4], 'white').family).toBe('white');
  });

  test.each([
    [[81, 13, 0], 'white'],
    [[24, 0, 7.9], 'black'],
    [[50, 5.9, 0], 'grey'],
    [labOfLCh(49, 40, 85), 'brown'],
    [labOfLCh(63, 44, 330), 'pink'],
    [labOfLCh(50, 50, 345), 'red'],
    [labOfLCh(50, 50, 42), 'orange'],
    [labOfLCh(60, 50, 68), 'yellow'],
    [labOfLCh(60, 50, 105), 'green'],
    [labOfLCh(60, 50, 190), 'blue'],
    [labOfLCh(60, 50, 300), 'purple'],
  ] as const)('%j is %s', (lab, family) => {
    expect(kindOf(lab as Lab).family).toBe(family);
  });
});
