import { expect, test } from 'vitest';
import { calibrationFaultWords } from '../../src/calibration/calibration-fault.ts';
import { readChart } from '../../src/calibration/colour-chart.ts';
import {
  correctionErrorOf,
  fitCorrection,
  rootTerms,
} from '../../src/calibration/colour-correction.ts';
import { readCard } from '../../src/calibration/read-card.ts';
import type { Rgb } from '../../src/calibration/robust-mean.ts';
import { planCards } from '../../src/calibration/swatch-card.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { spectraCgats } from '../../src/pigment/import/read-spectra.ts';
import { describeShared, readSharedJson } from '../shared.ts';
import { type Camera, gaussianCamera, LAMP } from '../tools/card-camera.ts';
import { type Chart, flat, photograph } from '../tools/card-photo.ts';

describeShared('a chart of 24 patches', () => {
  const { chart24, camera: published } = readSharedJson('reference/colour-checks.json');
  // D. Pascale, mean reflectance of 30 charts (2012).
  const spectra: Reflectance[] = chart24.patches.map((patch: { R_x1000: number[] }) =>
    spectrum<'R'>(patch.R_x1000.map((v) => v / 1000)),
  );
  const labs: Lab[] = spectra.map((R) => labOf(R));
  const say = (what: string, of: readonly number[]) =>
    console.log(`${what}: ${of.map((v) => v.toFixed(2)).join(', ')}`);

  test('root polynomials of degree 2 are those published', () => {
    // G. Finlayson, M. Mackiewicz, A. Hurlbert, IEEE Trans. Image Process. 24 (2015) 1460-1470, the
    // numbers as an open suite prints them.
    const { rgb, degree2 } = published.root_polynomial;
    rootTerms(rgb).forEach((v, i) => {
      expect(v).toBeCloseTo(degree2.values[i], 7);
    });
    const twice = rootTerms(rgb.map((v: number) => 2 * v) as unknown as Rgb);
    twice.forEach((v, i) => {
      expect(v).toBeCloseTo(2 * degree2.values[i], 7);
    });
  });

  /** Raw light of three plain sensitivities, balanced on the fifth grey, whose reflectance is known. */
  function balanced(light?: Float64Array): Rgb[] {
    const camera: Camera = gaussianCamera();
    const seen = spectra.map((R) => camera(R, light));
    const grey = seen[21]!;
    const known = spectra[21]![17]!;
    return seen.map((rgb) => rgb.map((v, c) => (v / grey[c]!) * known) as unknown as Rgb);
  }

  test.each([
    ['daylight', undefined],
    ['lamp-light', LAMP],
  ])('under %s a linear fit leaves less than 2, a root polynomial less', (light, power) => {
    const rgbs = balanced(power);
    const linear = correctionErrorOf(rgbs, labs, 'linear');
    const root = correctionErrorOf(rgbs, labs, 'root-polynomial');
    say(`${light}, linear: mean, max, held out`, Object.values(linear));
    say(`${light}, root polynomial`, Object.values(root));
    expect(linear.mean).toBeLessThan(2);
    expect(root.mean).toBeLessThan(linear.mean);
    expect(root.heldOut).toBeLessThan(2);
  });

  test('at half the exposure the corrected colours have half the light', () => {
    const rgbs = balanced();
    for (const kind of ['linear', 'root-polynomial'] as const) {
      const { labOf: corrected } = fitCorrection(rgbs, labs, kind);
      rgbs.forEach((rgb) => {
        const whole = corrected(rgb);
        const half = corrected(rgb.map((v) => v / 2) as unknown as Rgb);
        // Where CIELAB is a cube root, half the light is L* + 16 by 2^(1/3) less.
        if (half[0] > 20) expect((half[0] + 16) * Math.cbrt(2)).toBeCloseTo(whole[0] + 16, 6);
      });
    }
  });

  test('its values are read from spectra, and from the colours that charts are sold with', () => {
    const named = spectra.map((R, i) => ({ name: `patch ${i + 1}`, R }));
    const fromSpectra = readChart(spectraCgats(named));
    if (!fromSpectra.ok) throw new Error(fromSpectra.fault.code);
    fromSpectra.value.forEach((lab, i) => {
      expect(deltaE00(lab, labs[i]!)).toBeLessThan(0.01);
    });
    const rows = chart24.patches.map(
      ({ Lab_D50 }: { Lab_D50: number[] }, i: number) => `${i + 1}\t${Lab_D50.join('\t')}`,
    );
    const text = `CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID\tLAB_L\tLAB_A\tLAB_B\nEND_DATA_FORMAT\nBEGIN_DATA\n${rows.join('\n')}\nEND_DATA\n`;
    const fromLab = readChart(text);
    if (!fromLab.ok) throw new Error(fromLab.fault.code);
    // Adaptation from D50 is not the spectrum itself: surfaces differ by some units.
    fromLab.value.forEach((lab, i) => {
      expect(deltaE00(lab, labs[i]!)).toBeLessThan(3);
    });
    const codeOf = (given: string) => {
      const read = readChart(given);
      return read.ok ? '' : read.fault.code;
    };
    expect(codeOf('once upon a time')).toBe('chart-values');
    expect(codeOf(spectraCgats(named.slice(0, 12)))).toBe('chart-count');
  });

  test('photographed beside the card it makes strong colours come out', async () => {
    const paint = (pigment: string) => ({ pigment, label: pigment, density: null, caution: '' });
    // Patches of the chart painted into a card: their colours are known.
    const some = [0, 2, 6, 8, 12, 13, 14, 15, 16, 17];
    const [card] = planCards(
      paint('18'),
      some.map((i) => paint(String(i))),
      { tints: [] },
    );
    const painted = ({ parts }: { parts: readonly { pigment: string }[] }) =>
      parts[0]!.pigment === '18' ? flat(0.88) : spectra[Number(parts[0]!.pigment)]!;
    const chart: Chart = { R: spectra, x: 45, y: 150, step: 20 };
    const { pixels, at } = await photograph(
      card!,
      painted,
      { camera: gaussianCamera(), tilt: 6, uneven: 0.08, size: 1100, jpeg: 92 },
      chart,
    );
    const corners = [
      [chart.x, chart.y],
      [chart.x + 5 * chart.step, chart.y],
      [chart.x + 5 * chart.step, chart.y + 3 * chart.step],
      [chart.x, chart.y + 3 * chart.step],
    ].map(([x, y]) => at(x!, y!));
    const off = (options: Parameters<typeof readCard>[2]) => {
      const reading = readCard(pixels, card!, options);
      if (!reading.ok) throw new Error(calibrationFaultWords(reading.fault));
      const all = reading.value.places.map(({ place, lab }) =>
        deltaE00(lab, labOf(painted(place))),
      );
      return { mean: all.reduce((sum, v) => sum + v, 0) / all.length, chart: reading.value.chart };
    };
    const without = off({});
    const right = off({ chart: { labs, corners } });
    // Touched from another corner, and the other way round.
    const turned = off({ chart: { labs, corners: [2, 1, 0, 3].map((i) => corners[i]!) } });
    say('mean without and with the chart', [without.mean, right.mean]);
    expect(right.chart!.mean).toBeLessThan(2);
    expect(right.mean).toBeLessThan(2);
    expect(right.mean).toBeLessThan(without.mean);
    expect(turned.mean).toBeCloseTo(right.mean, 1);
    const lost = readCard(pixels, card!, {
      chart: { labs, corners: [corners[0]!, corners[0]!, corners[0]!, corners[0]!] },
    });
    expect(lost.ok ? '' : lost.fault.code).toBe('chart-place');
    const other = readCard(pixels, card!, {
      chart: { labs: labs.map(() => [50, 60, -40]), corners },
    });
    expect(other.ok ? '' : other.fault.code).toBe('chart-poor');
  });
});
