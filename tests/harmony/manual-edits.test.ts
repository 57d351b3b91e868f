import { expect, test } from 'vitest';
import { gather } from '../../src/harmony/gather.ts';
import {
  colourAt,
  correctColourByEye,
  type EditedHarmony,
  type EditFault,
  markSheen,
  removeColour,
  withColourName,
} from '../../src/harmony/manual-edits.ts';
import { addSpot, mergeColours, splitColourInTwo } from '../../src/harmony/merge-split.ts';
import { editFaultWords } from '../../src/messages/harmony-faults.ts';
import { sampleSpot } from '../../src/photo/spot-sample.ts';
import type { Result } from '../../src/result.ts';
import { picture } from '../photo/paint.ts';

const scene = picture(400, 200, (x, y) => {
  const light = 0.7 + 0.3 * Math.sin(x / 40 + y / 57);
  if (x < 220) return [190 * light, 60 * light, 50 * light];
  if (x < 320) return [60 * light, 90 * light, 170 * light];
  return [220 * light, 200 * light, 90 * light];
});
const start: EditedHarmony = value(gather(scene));

function value<T>(result: Result<T, EditFault>): T {
  if (!result.ok) throw new Error(editFaultWords[result.fault.code]);
  return result.value;
}
function sound(harmony: EditedHarmony): EditedHarmony {
  expect(harmony.colours.reduce((sum, c) => sum + c.share, 0)).toBeCloseTo(1, 9);
  expect(new Set(harmony.colours.map((c) => c.name)).size).toBe(harmony.colours.length);
  for (const c of harmony.colours) {
    expect(c.ladder).toHaveLength(6);
    expect(c.ladder.reduce((sum, s) => sum + s.share, 0)).toBeCloseTo(1, 9);
    for (let i = 1; i < 6; i++)
      expect(c.ladder[i]!.lab[0]).toBeLessThanOrEqual(c.ladder[i - 1]!.lab[0] + 1e-9);
  }
  expect(harmony.labels.data.some((v) => v !== 255)).toBe(true);
  for (const v of harmony.labels.data)
    if (v !== 255 && v >= harmony.colours.length) throw new Error(`label ${v}`);
  return harmony;
}

test('the scene has three colours, told apart by touch', () => {
  expect(sound(start).colours.length).toBe(3);
  expect(colourAt(start, 0.1, 0.5)).toBe(0);
  expect(colourAt(start, 0.65, 0.5)).toBe(1);
  expect(colourAt(start, 0.95, 0.5)).toBe(2);
  expect(colourAt(start, 1.5, 0.5)).toBe(null);
});

test('rename: the own name, never empty, never twice', () => {
  expect(value(withColourName(start, 1, ' Mother’s jug ')).colours[1]!.name).toBe('Mother’s jug');
  expect(withColourName(start, 1, '  ')).toEqual({ ok: false, fault: { code: 'no-name' } });
  const taken = withColourName(start, 1, start.colours[0]!.name);
  expect(taken).toEqual({ ok: false, fault: { code: 'name-taken' } });
  expect(withColourName(start, 9, 'x')).toEqual({ ok: false, fault: { code: 'no-such-colour' } });
});

test('drop: the others grow in proportion, its place is empty', () => {
  const two = sound(value(removeColour(start, 0)));
  expect(two.colours.length).toBe(2);
  expect(two.colours[0]!.share / two.colours[1]!.share).toBeCloseTo(
    start.colours[1]!.share / start.colours[2]!.share,
    9,
  );
  expect(colourAt(two, 0.1, 0.5)).toBe(null);
  expect(two.colours[colourAt(two, 0.65, 0.5)!]!.name).toBe(start.colours[1]!.name);
  const one = value(removeColour(two, 0));
  expect(removeColour(one, 0)).toEqual({ ok: false, fault: { code: 'last-colour' } });
});

test('join: shares are added and the place is shared', () => {
  const joined = sound(value(mergeColours(start, 1, 2)));
  expect(joined.colours.length).toBe(2);
  expect(joined.colours[1]!.share).toBeCloseTo(
    start.colours[1]!.share + start.colours[2]!.share,
    9,
  );
  expect(colourAt(joined, 0.65, 0.5)).toBe(colourAt(joined, 0.95, 0.5));
  expect(mergeColours(start, 1, 1)).toEqual({ ok: false, fault: { code: 'same-colour' } });
});

test('split undoes what was joined, from the pixels', () => {
  const joined = value(mergeColours(start, 1, 2));
  const parted = sound(value(splitColourInTwo(joined, 1, scene)));
  expect(parted.colours.length).toBe(3);
  for (const c of start.colours) {
    const again = parted.colours.find((p) => Math.abs(p.share - c.share) < 0.02)!;
    expect(Math.hypot(...again.lab.map((v, i) => v - c.lab[i]!))).toBeLessThan(4);
  }
  const even = value(gather(picture(40, 40, () => [90, 90, 90])));
  expect(
    splitColourInTwo(
      even,
      0,
      picture(40, 40, () => [90, 90, 90]),
    ),
  ).toEqual({
    ok: false,
    fault: { code: 'cannot-split' },
  });
});

test('a spot by hand takes its patch from what was there', () => {
  const spot = sampleSpot(scene, 0.9, 0.5, 9);
  if (!spot.ok) throw new Error('no spot');
  const more = sound(value(addSpot(start, spot.value)));
  expect(more.colours.length).toBe(4);
  const added = more.colours.find((c) => c.spotSide === 9)!;
  expect(added.share).toBeCloseTo(81 / 80000, 3);
  expect(added.lab).toEqual(spot.value.lab);
  expect(more.colours[colourAt(more, 0.9, 0.5)!]).toBe(added);
  let full = start;
  while (full.colours.length < 12) full = value(addSpot(full, spot.value));
  expect(addSpot(full, spot.value)).toEqual({ ok: false, fault: { code: 'too-many' } });
});

test('a correction by eye keeps both, and the ladder moves along', () => {
  const [L, a, b] = start.colours[0]!.lab;
  const once = sound(value(correctColourByEye(start, 0, [L, a - 3, b - 6])));
  expect(once.colours[0]!.lab).toEqual([L, a - 3, b - 6]);
  expect(once.colours[0]!.asGathered).toEqual([L, a, b]);
  expect(once.colours[0]!.altered).toBe('by eye');
  expect(once.colours[0]!.ladder[2]!.lab[2]).toBeCloseTo(
    start.colours[0]!.ladder[2]!.lab[2] - 6,
    9,
  );
  const twice = value(correctColourByEye(once, 0, [L, a, b - 9], 'cooler than this'));
  expect(twice.colours[0]!.asGathered).toEqual([L, a, b]);
  expect(start.colours[0]!.lab).toEqual([L, a, b]);
});

test('sheen is marked and unmarked', () => {
  const marked = value(markSheen(start, 0, true));
  expect(marked.colours[0]!.sheen).toBe(true);
  expect(value(markSheen(marked, 0, false)).colours[0]!.sheen).toBe(false);
});
