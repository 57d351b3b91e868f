import { describe, expect, test } from 'vitest';
import { inverse, multiplyColumn, product } from '../../src/colour/matrix.ts';
import { labOfLinear, linearOfLab } from '../../src/colour/rgb.ts';
import { gather } from '../../src/harmony/gather.ts';
import {
  correctColourByEye,
  type EditedHarmony,
  type EditFault,
  withColourName,
} from '../../src/harmony/manual-edits.ts';
import { addSpot, mergeColours, splitColourInTwo } from '../../src/harmony/merge-split.ts';
import { reapplyEdits } from '../../src/harmony/reapply-edits.ts';
import { sampleSpot } from '../../src/photo/spot-sample.ts';
import { whiteBalanceForLight } from '../../src/photo/white-balance.ts';
import type { Result } from '../../src/result.ts';
import { picture } from '../photo/paint.ts';

const value = <T>(result: Result<T, EditFault>): T => {
  if (!result.ok) throw new Error(result.fault.code);
  return result.value;
};
const scene = picture(240, 120, (x) =>
  x < 120 ? [170, 40, 40] : x < 180 ? [40, 70, 160] : [90, 150, 70],
);
const now: EditedHarmony = value(gather(scene));
const SAME = { lightChange: null, keepsShape: true } as const;
const sound = (harmony: EditedHarmony): EditedHarmony => {
  expect(harmony.colours.reduce((sum, c) => sum + c.share, 0)).toBeCloseTo(1, 9);
  expect(new Set(harmony.colours.map((c) => c.name)).size).toBe(harmony.colours.length);
  return harmony;
};
const called = (harmony: EditedHarmony, name: string) =>
  harmony.colours.find((c) => c.name === name);

describe('gathered anew', () => {
  test('untouched, nothing is carried and nothing lost', () => {
    expect(now.colours.length).toBe(3);
    expect(reapplyEdits(now, now, SAME)).toEqual({ harmony: now, lost: [] });
  });

  test('names, sheen and corrections by eye stay with their colours', () => {
    const { lab } = now.colours[0]!;
    const duller = [lab[0], lab[1] - 5, lab[2]] as const;
    const old = value(
      withColourName(value(correctColourByEye(now, 0, duller, 'by eye: duller')), 1, 'the jug'),
    );
    const { harmony, lost } = reapplyEdits(old, now, SAME);
    expect(lost).toEqual([]);
    expect(sound(harmony).colours[0]).toMatchObject({ lab: duller, altered: 'by eye: duller' });
    expect(harmony.colours[1]!.name).toBe('the jug');
  });

  test('two that were joined are joined again, and so by a mask that cuts them', () => {
    const old = value(mergeColours(now, 1, 2));
    const { harmony, lost } = reapplyEdits(old, now, SAME);
    expect(lost).toEqual([]);
    expect(sound(harmony).colours.map((c) => c.share)).toEqual(old.colours.map((c) => c.share));
    expect(harmony.labels).toEqual(old.labels);
    // Asked for more or fewer, joinings are let go, and named.
    const other = reapplyEdits(old, now, { ...SAME, keepsShape: false });
    expect(other.harmony).toEqual(now);
    expect(other.lost).toEqual(old.colours.flatMap((c) => (c.shaped ? [c.name] : [])));
  });

  test('one that was parted is parted again, where it was', () => {
    const joined = value(mergeColours(now, 1, 2));
    const plain: EditedHarmony = {
      ...joined,
      colours: joined.colours.map(({ shaped: _s, ...c }) => c),
    };
    const index = plain.colours.findIndex((_, i) => joined.colours[i]!.shaped);
    const old = value(splitColourInTwo(plain, index, scene));
    const { harmony, lost } = reapplyEdits(old, plain, SAME);
    expect(lost).toEqual([]);
    expect(sound(harmony).colours.length).toBe(3);
    for (const c of old.colours) {
      const again = called(harmony, c.name)!;
      expect(again.share).toBeCloseTo(c.share, 1);
      expect(again.shaped).toBe(c.shaped);
    }
  });

  test('a spot is there again, in its place; rubbed out, it is named', () => {
    const spot = sampleSpot(scene, 0.9, 0.5, 15);
    if (!spot.ok) throw new Error(spot.fault.code);
    const old = value(addSpot(now, spot.value));
    const added = old.colours.find((c) => c.spotSide === 15)!;
    const { harmony, lost } = reapplyEdits(old, now, SAME);
    expect(lost).toEqual([]);
    expect(sound(harmony).colours.find((c) => c.spotSide === 15)!.share).toBeCloseTo(
      added.share,
      3,
    );
    const data = Uint8Array.from({ length: 24 * 12 }, (_, i) => (i % 24 < 19 ? 1 : 0));
    const left = value(gather(scene, { mask: { width: 24, height: 12, data } }));
    expect(reapplyEdits(old, left, SAME).lost).toEqual([added.name]);
  });

  test('in another light places, names and spots are carried, what was said by eye is not', () => {
    const [from, to] = [
      whiteBalanceForLight('overcast').matrix,
      whiteBalanceForLight('lamp').matrix,
    ];
    const first: EditedHarmony = value(gather(scene, { adapt: from }));
    const then = value(gather(scene, { adapt: to }));
    const turn = product(to, inverse(from));
    const spot = sampleSpot(scene, 0.9, 0.5, 15);
    if (!spot.ok) throw new Error(spot.fault.code);
    const seen = (matrix: typeof from) =>
      labOfLinear(...multiplyColumn(matrix, ...spot.value.linear));
    const named = value(
      withColourName(value(addSpot(first, spot.value, seen(from))), 0, 'the jug'),
    );
    const { lab } = named.colours[1]!;
    const old = value(correctColourByEye(named, 1, [lab[0] + 4, lab[1], lab[2]]));
    const { harmony, lost } = reapplyEdits(old, then, { lightChange: turn, keepsShape: true });
    expect(lost).toEqual([old.colours[1]!.name]);
    const again = sound(harmony).colours.find((c) => c.spotSide === 15)!;
    again.lab.forEach((v, i) => {
      expect(v).toBeCloseTo(seen(to)[i]!, 6);
    });
    const jug = called(harmony, 'the jug')!;
    const turned = labOfLinear(...multiplyColumn(turn, ...linearOfLab(first.colours[0]!.lab)));
    jug.lab.forEach((v, i) => {
      expect(Math.abs(v - turned[i]!)).toBeLessThan(0.5);
    });
  });
});
