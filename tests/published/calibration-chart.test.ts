import { expect, test } from 'vitest';
import { readChart } from '../../src/calibration/colour-chart.ts';
import { correctionErrorOf, rootTerms } from '../../src/calibration/colour-correction.ts';
import type { Rgb } from '../../src/calibration/robust-mean.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { spectraCgats } from '../../src/pigment/import/read-spectra.ts';
import { describeShared, readSharedJson } from '../shared.ts';
import { type Camera, chartCamera, LAMP } from '../tools/card-camera.ts';
import { chartPatches } from '../tools/chart-patches.ts';

describeShared('a chart of 24 patches', () => {
  const { chart24, camera: published } = readSharedJson('reference/colour-checks.json');
  // D. Pascale, mean reflectance of 30 charts (2012).
  const spectra = chartPatches();
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

  // Published beside the spectra, computed with a real camera's sensitivities: a matrix leaves a mean of
  // 1.01 in daylight and 0.98 under lamp-light, 1.15 and 1.12 held out; root polynomials 0.57, 0.76 and 0.77.
  /** Raw light of a camera of our own, balanced on the fifth grey, whose reflectance is known. */
  function balanced(light?: Float64Array): Rgb[] {
    const camera: Camera = chartCamera(spectra);
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
});
