import { describe, expect, test } from 'vitest';
import { gather } from '../../src/harmony/gather.ts';
import { fullMask, keepMiddle, keptShare } from '../../src/photo/mask.ts';
import { neutralAt } from '../../src/photo/neutral.ts';
import { carried, named } from '../../src/ui/harmony/sight/carry.ts';
import {
  lookedAt,
  lookOf,
  matrixOf,
  NO_LOOK,
  spotLight,
  statedLight,
  storedMask,
} from '../../src/ui/harmony/sight/look.ts';
import { picture } from '../photo/paint.ts';

const words = { name: '', note: '', light: '', place: '', walk: '', date: '2031-05-17' };
const file = { file: 'a'.repeat(64), width: 40, height: 20, size: 1 };
const warm = picture(40, 20, () => [190, 160, 110]);

describe('the light in a record', () => {
  test.each([undefined, 0.18])('gives the same matrix when it is read again (card %s)', (grey) => {
    const set = neutralAt(warm, 0.5, 0.5, grey);
    if (!set.ok) throw new Error(set.fault.code);
    const at = { x: 0.5, y: 0.5, patch: 0.01, ...(grey === undefined ? {} : { grey }) };
    const light = spotLight(set.value, at, warm);
    if (light?.kind !== 'spot') throw new Error('no spot');
    matrixOf(light.spot).forEach((row, i) => {
      row.forEach((v, j) => {
        expect(v).toBeCloseTo(set.value.matrix[i]![j]!, 9);
      });
    });
    expect(light.spot.radius).toBeCloseTo(5 / 2 / 40, 9);
  });

  test('a stated light is known by its name', () => {
    const gathered = { width: 40, height: 20, colours: [], labels: file, remarks: [] };
    const look = lookOf({ ...words, photo: file, stated: 'lamp', gathered }, null, null);
    expect(look.light).toEqual(statedLight('lamp'));
  });
});

describe('what is kept, in a record', () => {
  const gathered = { width: 40, height: 20, colours: [], labels: file, remarks: ['small'] };
  const body = { ...words, photo: file, gathered };

  test('before a hand touched it, what was see-through is left out, with its rim', () => {
    const labels = fullMask(40, 20);
    labels.data.fill(0);
    labels.data[5 * 40 + 7] = 255;
    const look = lookOf(body, labels, null);
    expect(look.mask).toBeNull();
    expect(look.clear?.data.reduce((sum, v) => sum + v, 0)).toBe(5);
    expect(lookedAt(look)!.data[5 * 40 + 8]).toBe(0);
    expect(keptShare(lookedAt(look)!)).toBeCloseTo(1 - 5 / 800, 9);
  });

  test('rubbed out and see-through come back apart', () => {
    const clear = { ...fullMask(40, 20), data: new Uint8Array(800) };
    clear.data[3] = 1;
    const mask = keepMiddle(fullMask(40, 20));
    const stored = storedMask({ ...NO_LOOK, width: 40, height: 20, mask, clear });
    const look = lookOf(body, null, stored);
    expect(look.clear).toEqual(clear);
    expect(lookedAt(look)).toEqual(lookedAt({ mask, clear }));
  });

  test('a mask that keeps everything is none', () => {
    const look = lookOf(body, null, storedMask({ ...NO_LOOK, width: 40, height: 20 }));
    expect(look).toMatchObject({ mask: null, clear: null, remarks: ['small'] });
    expect(lookedAt(look)).toBeUndefined();
  });
});

describe('gathered anew', () => {
  const two = gather(picture(60, 40, (x) => (x < 30 ? [170, 40, 40] : [40, 70, 160])));
  if (!two.ok) throw new Error(two.fault.code);
  const { value: now } = two;

  test('names, corrections by eye and sheen stay with their colours', () => {
    named.add('the jug');
    const [red, blue] = now.colours;
    const lab = [red!.lab[0], red!.lab[1] - 5, red!.lab[2]] as const;
    const old = {
      ...now,
      colours: [
        { ...red!, lab, asGathered: red!.lab, altered: 'by eye: duller' },
        { ...blue!, name: 'the jug', sheen: true },
      ],
    };
    const { harmony, lost } = carried(old, now, true);
    expect(lost).toBe(false);
    expect(harmony.colours[0]).toMatchObject({ lab, altered: 'by eye: duller' });
    expect(harmony.colours[1]).toMatchObject({ name: 'the jug', sheen: true });
    // In another light nothing can be known to be the same.
    expect(carried(old, now, false)).toEqual({ harmony: now, lost: true });
  });

  test('a spot gathered by hand is lost, and that is said', () => {
    const old = { ...now, colours: now.colours.map((c) => ({ ...c, spotSide: 5 })) };
    expect(carried(old, now, true).lost).toBe(true);
    expect(carried(now, now, true)).toEqual({ harmony: now, lost: false });
  });
});
