import { expect, test } from 'vitest';
import { decode } from '../../src/colour/rgb.ts';
import { gather } from '../../src/harmony/gather.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { gatherFaultWords } from '../../src/messages/harmony-faults.ts';
import { photographRemarkWords } from '../../src/messages/photograph-messages.ts';
import type { Pixels } from '../../src/photo/pixels.ts';
import { picture } from '../photo/paint.ts';
import { encode } from '../tools/encode.ts';
import { stream } from '../tools/specimen-noise.ts';

function gathered(pixels: Pixels, options?: Parameters<typeof gather>[1]) {
  const result = gather(pixels, options);
  if (!result.ok) throw new Error(gatherFaultWords[result.fault.code]);
  const { colours, labels } = result.value;
  expect(colours.length).toBeGreaterThanOrEqual(1);
  expect(colours.length).toBeLessThanOrEqual(7);
  expect(colours.reduce((sum, c) => sum + c.share, 0)).toBeCloseTo(1, 9);
  expect(new Set(colours.map((c) => c.name)).size).toBe(colours.length);
  for (const c of colours) {
    expect(c.lab.every(Number.isFinite)).toBe(true);
    expect(c.ladder.map((s) => s.step)).toEqual(LADDER_STEPS);
    expect(c.ladder.reduce((sum, s) => sum + s.share, 0)).toBeCloseTo(1, 9);
    for (let i = 1; i < 6; i++)
      expect(c.ladder[i]!.lab[0]).toBeLessThanOrEqual(c.ladder[i - 1]!.lab[0]);
  }
  expect(labels.data.length).toBe(labels.width * labels.height);
  expect(labels.data.some((v) => v !== 255)).toBe(true);
  expect(Math.max(labels.width, labels.height)).toBeLessThanOrEqual(512);
  for (const v of labels.data) if (v !== 255 && v >= colours.length) throw new Error(`label ${v}`);
  return result.value;
}

test('a red cloth with deep folds beside a blue one is two colours', () => {
  const scene = picture(400, 300, (x, y) => {
    const light = 0.25 + 0.75 * (0.5 + 0.5 * Math.sin(x / 23 + y / 61));
    const grain = 1 + 0.04 * Math.sin(x * 12.9898 + y * 78.233);
    const v = 255 * (light * grain) ** (1 / 2.2);
    return x < 230 ? [v * 0.8, v * 0.2, v * 0.15] : [v * 0.2, v * 0.35, v * 0.8];
  });
  const { colours } = gathered(scene);
  expect(colours.length).toBe(2);
  expect(colours[0]!.share).toBeCloseTo(230 / 400, 1);
  expect(colours[0]!.lab[1]).toBeGreaterThan(30);
  expect(colours[1]!.lab[2]).toBeLessThan(-20);
});

test('the same pixels give the same harmony to the last digit', () => {
  const scene = picture(133, 88, (x, y) => [(x * 17) % 256, (y * 7) % 256, (x * y) % 256]);
  expect(gather(scene)).toEqual(gather(scene));
});

test.each([1, 2, 3, 4, 5, 6, 7])('%d colours on request', (colours) => {
  const scene = picture(128, 128, (x, y) => [2 * x, 2 * y, (2 * (x ^ y)) & 255]);
  expect(gathered(scene, { colours }).colours.length).toBe(colours);
});

test('odd pictures give a harmony with a remark', () => {
  expect(
    gathered(picture(1, 1, () => [200, 30, 30]))
      .remarks.map(photographRemarkWords)
      .join(' '),
  ).toContain('few pixels');
  expect(gathered(picture(300, 200, () => [90, 120, 60])).colours.length).toBe(1);
  expect(
    gathered(picture(300, 200, () => [0, 0, 0]))
      .remarks.map(photographRemarkWords)
      .join(' '),
  ).toContain('black');
  expect(
    gathered(picture(300, 200, () => [255, 255, 255]))
      .remarks.map(photographRemarkWords)
      .join(' '),
  ).toContain('blown');
  expect(
    gathered(picture(300, 200, (x) => [x % 256, x % 256, x % 256]))
      .remarks.map(photographRemarkWords)
      .join(' '),
  ).toContain('grey');
});

test('nothing to look at is a fault with words', () => {
  const clear = picture(20, 20, () => [10, 20, 30, 0]);
  expect(gather(clear)).toEqual({ ok: false, fault: { code: 'transparent' } });
  const full = picture(20, 20, () => [10, 20, 30]);
  const mask = { width: 20, height: 20, data: new Uint8Array(400) };
  expect(gather(full, { mask })).toEqual({ ok: false, fault: { code: 'all-rubbed-out' } });
});

test('transparent pixels and pixels rubbed out are not looked at', () => {
  const half = picture(200, 100, (x) => (x < 100 ? [200, 40, 30] : [255, 255, 255, 0]));
  expect(gathered(half).colours.length).toBe(1);
  const both = picture(200, 100, (x) => (x < 100 ? [200, 40, 30] : [20, 60, 200]));
  const mask = { width: 200, height: 100, data: new Uint8Array(20000) };
  mask.data[50] = 1;
  const one = gathered(both, { mask });
  expect(one.colours.length).toBe(1);
  expect(one.colours[0]!.lab[1]).toBeGreaterThan(30);
  expect(one.remarks.map(photographRemarkWords).join(' ')).toContain(
    'Only a few pixels are looked at',
  );
});

test('gathering stops when asked', () => {
  const scene = picture(64, 64, (x, y) => [x, y, 0]);
  expect(gather(scene, { stopped: () => true })).toEqual({ ok: false, fault: { code: 'stopped' } });
});

test('noise, a panorama and deep files work', () => {
  const next = stream(3);
  const noise = gathered(picture(150, 150, () => [255 * next(), 255 * next(), 255 * next()]));
  expect(noise.colours).toHaveLength(1);
  const wide = gathered(picture(30000, 20, (x) => (x < 9000 ? [180, 40, 30] : [40, 90, 160])));
  expect(wide.colours.length).toBe(2);
  expect(wide.colours[0]!.share).toBeCloseTo(0.7, 2);
  const data = new Uint16Array(200 * 100 * 4);
  for (let i = 0; i < 20000; i++)
    data.set(i % 200 < 60 ? [51400, 10280, 7710, 65535] : [10280, 23130, 41120, 65535], i * 4);
  const deep = gathered({ width: 200, height: 100, data, space: 'srgb' });
  const flat = gathered(picture(200, 100, (x) => (x < 60 ? [200, 40, 30] : [40, 90, 160])));
  expect(deep.colours.map((c) => c.lab)).toEqual(flat.colours.map((c) => c.lab));
});

test('the same colours in Display P3 numbers are the same colours', () => {
  const p3 = { ...picture(64, 64, () => [200, 80, 60]), space: 'display-p3' as const };
  // 200, 80, 60 in Display P3 by the matrices of colour/rgb.ts: redder than the sRGB of that name.
  const [, a] = gathered(p3).colours[0]!.lab;
  const [, sa] = gathered(picture(64, 64, () => [200, 80, 60])).colours[0]!.lab;
  expect(a).toBeGreaterThan(sa + 4);
});

test('an accent of a thousandth of the area is kept, marked and last', () => {
  const scene = picture(600, 400, (x, y) => {
    const light = 0.6 + 0.4 * Math.sin(x / 70 + y / 90);
    if ((x - 300) ** 2 + (y - 200) ** 2 < 9 ** 2) return [210, 30, 30];
    // Light multiplies what is linear: the same green in light and in shadow.
    const [red, green, blue] = [70, 130, 60].map((v) => 255 * encode(light * decode(v / 255)));
    return [red!, green!, blue!];
  });
  const { colours } = gathered(scene);
  expect(colours.length).toBe(2);
  expect(colours[1]!.accent).toBe(true);
  expect(colours[1]!.lab[1]).toBeGreaterThan(50);
  expect(colours[1]!.share).toBeCloseTo((Math.PI * 81) / 240000, 3);
});

test('a number of colours that no harmony has is a mistake of the caller', () => {
  const scene = picture(8, 8, () => [1, 2, 3]);
  for (const colours of [0, 8, 2.5, Number.NaN])
    expect(() => gather(scene, { colours })).toThrow(RangeError);
  expect(() => gather({ ...scene, width: 9 })).toThrow(RangeError);
});

test('progress runs from nothing to all', () => {
  const seen: number[] = [];
  gather(
    picture(150, 150, (x, y) => [x, y, 0]),
    { onProgress: (done) => seen.push(done) },
  );
  expect(seen.at(-1)).toBe(1);
  expect(seen).toEqual([...seen].sort((p, q) => p - q));
});
