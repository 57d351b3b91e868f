import { describe, expect, test } from 'vitest';
import { fullMask, includedShare, keepMiddle } from '../../src/photo/mask.ts';
import { whiteBalanceAt } from '../../src/photo/white-balance.ts';
import {
  DEFAULT_GATHERING_SETTINGS,
  gatheringMask,
  settingsFromSpecimen,
  storedMask,
  whiteBalanceFromSpot,
  whiteBalanceFromStated,
  whiteBalanceMatrix,
} from '../../src/ui/state/harmony/gathering-settings.ts';
import { picture } from '../photo/paint.ts';

const words = { name: '', note: '', light: '', place: '', walk: '', date: '2031-05-17' };
const file = { file: 'a'.repeat(64), width: 40, height: 20, size: 1 };
const warm = picture(40, 20, () => [190, 160, 110]);

describe('the light in a record', () => {
  test.each([undefined, 0.18])('gives the same matrix when it is read again (card %s)', (grey) => {
    const set = whiteBalanceAt(warm, 0.5, 0.5, grey);
    if (!set.ok) throw new Error(set.fault.code);
    const at = { x: 0.5, y: 0.5, patch: 0.01, ...(grey === undefined ? {} : { grey }) };
    const light = whiteBalanceFromSpot(set.value, at, warm);
    if (light?.kind !== 'spot') throw new Error('no spot');
    whiteBalanceMatrix(light.spot).forEach((row, i) => {
      row.forEach((v, j) => {
        expect(v).toBeCloseTo(set.value.matrix[i]![j]!, 9);
      });
    });
    expect(light.spot.radius).toBeCloseTo(5 / 2 / 40, 9);
  });

  test('a stated light is known by its name', () => {
    const gathered = { width: 40, height: 20, colours: [], labels: file, remarks: [] };
    const look = settingsFromSpecimen(
      { ...words, photo: file, stated: 'lamp', gathered },
      null,
      null,
    );
    expect(look.light).toEqual(whiteBalanceFromStated('lamp'));
  });
});

describe('what is kept, in a record', () => {
  const gathered = { width: 40, height: 20, colours: [], labels: file, remarks: ['small'] };
  const body = { ...words, photo: file, gathered };

  test('before a hand touched it, what was see-through is left out, with its rim', () => {
    const labels = fullMask(40, 20);
    labels.data.fill(0);
    labels.data[5 * 40 + 7] = 255;
    const look = settingsFromSpecimen(body, labels, null);
    expect(look.mask).toBeNull();
    expect(look.transparentMask?.data.reduce((sum, v) => sum + v, 0)).toBe(5);
    expect(gatheringMask(look)!.data[5 * 40 + 8]).toBe(0);
    expect(includedShare(gatheringMask(look)!)).toBeCloseTo(1 - 5 / 800, 9);
  });

  test('rubbed out and see-through come back apart', () => {
    const clear = { ...fullMask(40, 20), data: new Uint8Array(800) };
    clear.data[3] = 1;
    const mask = keepMiddle(fullMask(40, 20));
    const stored = storedMask({
      ...DEFAULT_GATHERING_SETTINGS,
      width: 40,
      height: 20,
      mask,
      transparentMask: clear,
    });
    const look = settingsFromSpecimen(body, null, stored);
    expect(look.transparentMask).toEqual(clear);
    expect(gatheringMask(look)).toEqual(gatheringMask({ mask, transparentMask: clear }));
  });

  test('a mask that keeps everything is none', () => {
    const look = settingsFromSpecimen(
      body,
      null,
      storedMask({ ...DEFAULT_GATHERING_SETTINGS, width: 40, height: 20 }),
    );
    expect(look).toMatchObject({ mask: null, transparentMask: null, remarks: ['small'] });
    expect(gatheringMask(look)).toBeUndefined();
  });
});
