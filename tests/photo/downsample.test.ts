import { expect, test } from 'vitest';
import { oklabOfLinear } from '../../src/colour/oklab.ts';
import { decode } from '../../src/colour/rgb.ts';
import {
  type DownsampledImage,
  Downsampler,
  downsampled,
  downsampledSize,
} from '../../src/photo/downsample.ts';
import { stream } from '../tools/specimen-noise.ts';
import { picture } from './paint.ts';

test('every pixel is averaged in linear light', () => {
  // A checkerboard of black and white is half the light, not half the number.
  const work = downsampled(
    picture(2400, 1600, (x, y) => ((x + y) % 2 ? [255, 255, 255] : [0, 0, 0])),
  )!;
  expect(work.width * work.height).toBeGreaterThan(280_000);
  expect(work.width * work.height).toBeLessThan(320_000);
  expect(work.includedPixels).toBe(2400 * 1600);
  let light = 0;
  for (let i = 0; i < work.L.length; i++) light += work.pixelCounts[i]! * work.L[i]! ** 3;
  expect(light / work.includedPixels).toBeCloseTo(0.5, 3);
});

test('a small photograph keeps its pixels, in OKLab', () => {
  const next = stream(1);
  const scene = picture(40, 30, () => [255 * next(), 255 * next(), 255 * next()]);
  const work = downsampled(scene)!;
  expect([work.width, work.height]).toEqual([40, 30]);
  const out = new Float64Array(3);
  for (let i = 0; i < 1200; i++) {
    const at = (c: number) => decode(scene.data[i * 4 + c]! / 255);
    oklabOfLinear(at(0), at(1), at(2), out);
    expect(work.L[i]).toBeCloseTo(out[0]!, 4);
    expect(work.a[i]).toBeCloseTo(out[1]!, 4);
    expect(work.b[i]).toBeCloseTo(out[2]!, 4);
  }
});

test('one photograph has one work image at any size', () => {
  expect(downsampledSize(1200, 900)).toEqual(downsampledSize(4000, 3000));
  const [columns, rows] = downsampledSize(30000, 20);
  expect(columns * rows).toBeGreaterThan(270_000);
  expect(columns * rows).toBeLessThan(330_000);
  expect(downsampledSize(1, 1)).toEqual([1, 1]);
  expect(downsampledSize(1_000_000, 1)[1]).toBe(1);
});

test('see-through and masked pixels do not colour their cell', () => {
  const scene = picture(1500, 1000, (x) => (x % 2 ? [255, 255, 255, 0] : [90, 20, 20]));
  const work = downsampled(scene)!;
  const pure = downsampled(picture(8, 8, () => [90, 20, 20]))!;
  expect(work.includedPixels).toBe(750 * 1000);
  const at = work.pixelCounts.findIndex((n) => n > 0);
  expect(work.a[at]).toBeCloseTo(pure.a[0]!, 6);
  const opaque = picture(1500, 1000, (x) => (x % 2 ? [255, 255, 255] : [90, 20, 20]));
  const mask = {
    width: 1500,
    height: 1000,
    data: Uint8Array.from({ length: 1_500_000 }, (_, i) => (i + 1) % 2),
  };
  expect(downsampled(opaque, { mask })!.a[at]).toBeCloseTo(pure.a[0]!, 6);
});

test('memory that does not begin at a whole word is read all the same', () => {
  const scene = picture(50, 40, (x, y) => [x * 5, y * 6, 40]);
  const shifted = new Uint8Array(new ArrayBuffer(scene.data.length + 1), 1);
  shifted.set(scene.data);
  expect(downsampled({ ...scene, data: shifted })).toEqual(downsampled(scene));
});

test('a photograph averaged in parts has the cells of the whole, to the last digit', () => {
  const next = stream(5);
  for (const [width, height, seeThrough] of [
    [801, 607, false],
    [503, 1009, true],
    [40, 30, false],
  ] as const) {
    const scene = picture(width, height, () => [
      255 * next(),
      255 * next(),
      255 * next(),
      seeThrough && next() < 0.2 ? 0 : 255,
    ]);
    const masks = [
      undefined,
      { width: 7, height: 5, data: Uint8Array.from({ length: 35 }, (_, i) => Number(i % 3 > 0)) },
      { width, height, data: Uint8Array.from({ length: width * height }, (_, i) => i & 1) },
    ];
    const [, rows] = downsampledSize(width, height);
    for (const mask of masks) {
      const cuts = [0, Math.floor(rows / 5), rows >> 1, rows - 1, rows];
      const makings = cuts.slice(1).map((to, i) => {
        const making = new Downsampler(scene, { mask }, { from: cuts[i]!, to });
        const { from, to: end } = making.lines;
        making.add(scene.data.subarray(from * width * 4, end * width * 4), end - from);
        return making;
      });
      const others = makings.slice(1).map((making) => making.finishedRows());
      const [whole, made] = [downsampled(scene, { mask })!, makings[0]!.mergeRows(others)];
      for (const key of ['L', 'a', 'b', 'pixelCounts'] as const) {
        const bytes = (of: DownsampledImage) => Buffer.from(of[key].buffer);
        expect(bytes(made).equals(bytes(whole)), key).toBe(true);
      }
      const figures = ({ L, a, b, pixelCounts: seen, ...rest }: DownsampledImage) => rest;
      expect(figures(made)).toEqual(figures(whole));
    }
  }
});
