import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { BANDS, spectrum } from '../../src/colour/grid.ts';
import { labOfXYZ } from '../../src/colour/lab.ts';
import { ILLUMINANT_A } from '../../src/colour/observer.ts';
import { lampDrift, mixturePropertiesOf } from '../../src/mixture/mixture-properties.ts';
import { type Amount, predictColour } from '../../src/mixture/predict.ts';
import { starterShelf } from '../../src/pigment/starter-shelf.ts';
import { invented } from './invented.ts';

const pile: Amount[] = [
  { pigment: 'white', amount: 6 },
  { pigment: 'blue', amount: 2 },
  { pigment: 'red', amount: 1 },
];
const paint = (name: string) => invented.paints.find((p) => p.pigment === name)!.paint;

describe('a judgement', () => {
  test('by lamp-light agrees with direct recomputation', () => {
    // Kubelka-Munk, Saunderson and the table of CIE A written out once more.
    let [X, Y, Z] = [0, 0, 0];
    for (let b = 0; b < BANDS; b++) {
      const sum = (of: 'K' | 'S') =>
        pile.reduce((all, a) => all + a.amount * paint(a.pigment)[of][b]!, 0);
      const q = sum('K') / sum('S');
      const R = 1 + q - Math.sqrt(q * q + 2 * q);
      const seen = 0.03 + (0.97 * 0.35 * R) / (1 - 0.65 * R);
      X += seen * ILLUMINANT_A.X[b]!;
      Y += seen * ILLUMINANT_A.Y[b]!;
      Z += seen * ILLUMINANT_A.Z[b]!;
    }
    const lamp = labOfXYZ(X, Y, Z, ILLUMINANT_A.white);
    const found = mixturePropertiesOf(pile, invented);
    for (const i of [0, 1, 2] as const) expect(found.lamp[i]).toBeCloseTo(lamp[i], 8);
    expect(found.lampShift).toBeCloseTo(deltaE00(predictColour(pile, invented), lamp), 8);
  });

  test('of a slip agrees with direct recomputation', () => {
    const { slip } = mixturePropertiesOf(pile, invented);
    // Red absorbs more than the others: a little of it goes furthest.
    expect(slip.pigment).toBe('red');
    const at = (red: number) =>
      predictColour([pile[0]!, pile[1]!, { ...pile[2]!, amount: red }], invented);
    const worse = Math.max(deltaE00(at(1), at(1.1)), deltaE00(at(1), at(0.9)));
    expect(slip.deltaE00).toBeCloseTo(worse, 10);
  });

  test('does not depend on the unit of the amounts', () => {
    const tenfold = pile.map((a) => ({ ...a, amount: 10 * a.amount }));
    const [one, other] = [
      mixturePropertiesOf(pile, invented),
      mixturePropertiesOf(tenfold, invented),
    ];
    expect(other.slip.deltaE00).toBeCloseTo(one.slip.deltaE00, 9);
    expect(other.contrast).toBeCloseTo(one.contrast, 9);
  });

  test('tells what is known of our own pigments', () => {
    const shelf = starterShelf();
    const { hazards, weakest, pairs, opacity } = mixturePropertiesOf(
      [
        { pigment: 'lead_white', amount: 4 },
        { pigment: 'madder_lake', amount: 1 },
      ],
      shelf,
    );
    expect(hazards.map((h) => [h.pigment, h.level])).toEqual([['lead_white', 'toxic']]);
    expect(hazards[0]!.caution.length).toBeGreaterThan(10);
    expect(weakest?.pigment).toBe('madder_lake');
    expect(pairs.map((p) => [p.pigments, p.severity])).toEqual([
      [['lead_white', 'madder_lake'], 'caution'],
    ]);
    expect(opacity).toBe('opaque');
    const lake = mixturePropertiesOf([{ pigment: 'madder_lake', amount: 1 }], shelf);
    expect(lake.contrast).toBeGreaterThan(0);
    expect(lake.contrast).toBeLessThan(
      mixturePropertiesOf([{ pigment: 'lead_white', amount: 1 }], shelf).contrast,
    );
  });

  test('knows no facts of a stranger’s shelf, and says so by saying nothing', () => {
    const found = mixturePropertiesOf(pile, invented);
    expect(found.hazards).toEqual([]);
    expect(found.unknown).toEqual(['white', 'blue', 'red']);
    expect(found.weakest).toBeNull();
  });

  test('takes what a studio knows of its own pigments, whose light nobody tested', () => {
    const found = mixturePropertiesOf(pile, invented, (pigment) =>
      pigment === 'blue'
        ? { hazard: { level: 'toxic', sentence: 'own', caution: 'gloves' }, lightfast: null }
        : null,
    );
    expect(found.hazards).toEqual([
      { pigment: 'blue', level: 'toxic', sentence: 'own', caution: 'gloves' },
    ]);
    expect(found.unknown).toEqual(['white', 'red']);
    expect(found.weakest).toBeNull();
  });

  test('names pigments that are films', () => {
    const none = new Array<number>(BANDS).fill(0);
    const clear = { K: paint('red').K, S: spectrum<'S'>(none) };
    const lake = { pigment: 'lake', label: 'lake', paint: clear };
    const shelf = { ...invented, paints: [...invented.paints, lake] };
    expect(mixturePropertiesOf([...pile, { pigment: 'lake', amount: 1 }], shelf).films).toEqual([
      'lake',
    ]);
  });
});

test('lamp-light drift is nothing for colours that move together', () => {
  const moved = [40, 60, 80].map((L) => ({
    lab: [L, 5, 5] as const,
    lamp: [L + 1, 8, 12] as const,
  }));
  expect(lampDrift(moved)).toEqual(moved.map(() => expect.closeTo(0, 9)));
  const [first, ...rest] = moved;
  const odd = [{ ...first!, lamp: [41, -8, 2] as const }, ...rest];
  expect(lampDrift(odd)[0]).toBeGreaterThan(10);
  expect(lampDrift([first!])).toEqual([0]);
});
