import { expect, test } from 'vitest';
import { photographedSwatches } from '../../src/calibration/accept-calibration.ts';
import { calibratePaints } from '../../src/calibration/calibrate-paints.ts';
import { calibrationFaultWords } from '../../src/calibration/calibration-fault.ts';
import type { PaintedSwatch } from '../../src/calibration/painted-swatch.ts';
import { readCard } from '../../src/calibration/read-card.ts';
import { median } from '../../src/calibration/robust-mean.ts';
import { planCards, type SwatchCard } from '../../src/calibration/swatch-card.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { random } from '../optics/random.ts';
import { describeShared, readSharedJson } from '../shared.ts';
import { type Camera, gaussianCamera, IDEAL } from '../tools/card-camera.ts';
import { type Chart, photograph } from '../tools/card-photo.ts';
import {
  measuredPaints,
  neighbourOf,
  randomPile,
  MEASURED_SURFACE as surface,
} from '../tools/measured-paints.ts';

const soak = process.env.KINGCUP_SOAK === '1';

// The whole way of a painter: 27 measured paints (Y. Okumura, Rochester, 2005) brushed out on cards, which
// are rendered as a camera of our own photographs them, read, fitted, and judged on mixtures.
describeShared('paints calibrated from photographed cards', () => {
  const truth = measuredPaints();
  const names = truth.map((_, i) => `paint ${i}`);
  const labTrue = (parts: ArrayLike<number>) =>
    labOf(predictReflectance({ parts }, truth, surface));
  const reflectance = (parts: readonly { pigment: string; parts: number }[]): Reflectance =>
    predictReflectance(
      { parts: names.map((name) => parts.find((p) => p.pigment === name)?.parts ?? 0) },
      truth,
      surface,
    );
  const paint = (pigment: string) => ({ pigment, label: pigment, density: null, caution: '' });
  const [white, ...others] = names.map(paint);
  const cards: SwatchCard[] = planCards(white!, others);
  const { chart24 } = readSharedJson('reference/colour-checks.json');
  const patches: Reflectance[] = chart24.patches.map((patch: { R_x1000: number[] }) =>
    spectrum<'R'>(patch.R_x1000.map((v) => v / 1000)),
  );
  const chartLabs = patches.map((R) => labOf(R));

  async function swatchesOf(camera: Camera, charted: boolean): Promise<PaintedSwatch[]> {
    const all: PaintedSwatch[] = [];
    for (const card of cards) {
      // Beside the page, where a chart lies on a table.
      const chart: Chart = { R: patches, x: -42, y: 60, step: 7 };
      const shot = { camera, tilt: 5, turn: 3, uneven: 0.1, noise: 0.004, curve: 0.15, jpeg: 92 };
      const { pixels, at } = await photograph(
        card,
        ({ parts }) => reflectance(parts),
        { ...shot, size: soak ? 2000 : 1300, fill: 0.7, seed: card.page },
        charted ? chart : undefined,
      );
      const corners = [
        [0, 0],
        [5, 0],
        [5, 3],
        [0, 3],
      ].map(([u, v]) => at(chart.x + u! * chart.step, chart.y + v! * chart.step));
      const reading = readCard(
        pixels,
        card,
        charted ? { chart: { labs: chartLabs, corners } } : {},
      );
      if (!reading.ok) throw new Error(calibrationFaultWords(reading.fault));
      all.push(...photographedSwatches(reading.value, '2026-05-01', (n) => `${n}`));
    }
    return all;
  }

  function judge(
    swatches: readonly PaintedSwatch[],
    named: boolean,
  ): [median: number, tenth: number] {
    const { normal } = random(3);
    const paints = names.map((pigment, i) => ({
      pigment,
      label: pigment,
      named: named ? (i === 0 ? truth[0]! : neighbourOf(truth[i]!, normal)) : null,
    }));
    const result = calibratePaints(names[0]!, paints, swatches, surface);
    if (!result.ok) throw new Error(calibrationFaultWords(result.fault));
    const found = result.value.paints.map((fitted) => fitted.paint);
    const { uniform } = random(77);
    const off = Array.from({ length: 300 }, () => {
      const parts = randomPile(truth.length, uniform);
      return deltaE00(labTrue(parts), labOf(predictReflectance({ parts }, found, surface)));
    }).sort((a, b) => a - b);
    return [median(off), off[Math.floor(0.9 * off.length)]!];
  }
  const say = (what: string, of: readonly number[]) =>
    console.log(`${what}: ${of.map((v) => v.toFixed(2)).join(', ')}`);

  test.each<[string, Camera, boolean, [number, number], [number, number]]>([
    ['a faithful camera', IDEAL, false, [2.5, 6.5], [1.5, 3]],
    ['our camera', gaussianCamera(), false, [4, 9], [3.5, 7]],
    ['our camera with a chart', gaussianCamera(), true, [3.5, 8], [3, 6]],
  ])(
    'by %s',
    async (what, camera, charted, unnamedBars, namedBars) => {
      const swatches = await swatchesOf(camera, charted);
      const off = swatches
        .map(({ parts, lab }) => deltaE00(lab, labOf(reflectance(parts))))
        .sort((a, b) => a - b);
      say(`${what}, the swatches themselves`, [median(off), off[Math.floor(0.9 * off.length)]!]);
      const unnamed = judge(swatches, false);
      const named = judge(swatches, true);
      say(`${what}, mixtures, nothing known`, unnamed);
      say(`${what}, mixtures, pigments named`, named);
      unnamed.forEach((v, i) => {
        expect(v).toBeLessThanOrEqual(unnamedBars[i]!);
      });
      named.forEach((v, i) => {
        expect(v).toBeLessThanOrEqual(namedBars[i]!);
      });
    },
    300_000,
  );

  test('the places hold what is painted on them', () => {
    expect(
      cards.flatMap(({ places }) => places).filter(({ kind }) => kind === 'paint'),
    ).toHaveLength(2 * 27 - 1);
    const lab: Lab = labOf(reflectance([{ pigment: names[0]!, parts: 1 }]));
    expect(lab[0]).toBeGreaterThan(90);
  });
});
