import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { spectraFaultWords } from '../../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../../src/number-format.ts';
import { readCgats, type Spectra } from '../../../src/pigment/import/cgats.ts';
import { describeShared, readShared } from '../../shared.ts';
import { remarkWords } from '../remark-words.ts';

const read = (text: string): Spectra => {
  const spectra = readCgats(text);
  if (!spectra.ok) throw new Error(spectraFaultWords(spectra.fault, plainNumber));
  return spectra.value;
};
const codeOf = (text: string) => {
  const spectra = readCgats(text);
  if (spectra.ok) throw new Error('it was read');
  expect(spectraFaultWords(spectra.fault, plainNumber)).toMatch(/^.{20,}\.$/s);
  return spectra.fault.code;
};

// CGATS.17 / ISO 28178 in two dialects: the same six patches, as fractions in tens and as per cent in twenties.
describeShared('the example files', () => {
  const tens = readShared('reference/cgats-example-fraction-10nm.txt');
  const twenties = readShared('reference/cgats-example-percent-20nm.txt');

  test('fractions every 10 nm', () => {
    const { samples, geometry, specular, remarks } = read(tens);
    expect(samples.map(({ name }) => name)).toEqual([
      'dark skin',
      'light skin',
      'blue sky',
      'foliage',
      'blue flower',
      'bluish green',
    ]);
    expect(samples[0]!.R[0]).toBe(0.055);
    expect(samples[5]!.R[35]).toBe(0.229);
    expect([geometry, specular]).toEqual(['45/0', 'excluded']);
    expect(remarks).toEqual([]);
  });

  test('per cent every 20 nm are the same patches', () => {
    const fine = read(tens).samples;
    const { samples, remarks } = read(twenties);
    expect(remarkWords(remarks).join(' ')).toMatch(/every 20 nm.*per cent/);
    expect(samples).toHaveLength(6);
    samples.forEach(({ name, R }, i) => {
      expect(name).toBe(fine[i]!.name);
      R.forEach((r, band) => {
        // At its own wavelengths exactly; between them as near as 20 nm can tell.
        if (band >= 1 && band % 2 === 1) expect(r).toBeCloseTo(fine[i]!.R[band]!, 10);
        else if (band > 1) expect(Math.abs(r - fine[i]!.R[band]!)).toBeLessThan(0.02);
      });
    });
  });

  test('decimal commas, CRLF and other names of the fields', () => {
    const wanted = read(tens).samples.map(({ R }) => [...R]);
    for (const field of ['SPECTRAL_', 'SPEC_', 'nm', 'SPECTRAL_NM_', 'R_']) {
      const text = tens
        .replaceAll('SPECTRAL_NM', field)
        .replace(/\b0\.(\d{4})\b/g, '0,$1')
        .replaceAll('\n', '\r\n');
      expect(read(text).samples.map(({ R }) => [...R])).toEqual(wanted);
    }
  });

  test('names with spaces need no quotes where tabs part the cells', () => {
    expect(read(tens.replaceAll('"', '')).samples[1]!.name).toBe('light skin');
  });

  test('a file cut short', () => {
    expect(codeOf(tens.slice(0, -200))).toBe('spectra-cut');
  });
});

const nms = Array.from({ length: 31 }, (_, i) => 400 + 10 * i);
const file = (values: (nm: number) => number | string, fields = nms.map((nm) => `NM${nm}`)) =>
  `CGATS.17\nBEGIN_DATA_FORMAT\nSAMPLE_ID ${fields.join(' ')}\nEND_DATA_FORMAT\nBEGIN_DATA\nA1 ${nms.map(values).join(' ')}\nEND_DATA\n`;

describe('what is refused, and what is not', () => {
  test('a sample without a name of its own goes by its id', () => {
    const { samples, geometry, remarks } = read(file(() => 0.4));
    expect(samples[0]!.name).toBe('A1');
    expect(geometry).toBeNull();
    expect(remarkWords(remarks).join(' ')).toMatch(/380.*730/);
  });
  test('noise below 0 counts as 0, more is refused', () => {
    const noisy = read(file((nm) => (nm === 500 ? -0.002 : 0.3)));
    expect(noisy.samples[0]!.R[12]).toBe(0);
    expect(remarkWords(noisy.remarks).join(' ')).toContain('noise');
    expect(codeOf(file((nm) => (nm === 500 ? -0.2 : 0.3)))).toBe('spectra-range');
    expect(codeOf(file((nm) => (nm === 500 ? 300 : 30)))).toBe('spectra-range');
  });
  test('words for numbers', () => {
    expect(codeOf(file((nm) => (nm === 500 ? 'n/a' : 0.3)))).toBe('spectra-text');
  });
  test('a value too few', () => {
    expect(codeOf(file(() => 0.3).replace('A1 0.3', 'A1'))).toBe('spectra-row');
  });
  test('no samples, no spectra, no CGATS', () => {
    expect(codeOf(file(() => 0.3).replace(/A1.*\n/, ''))).toBe('spectra-no-samples');
    expect(codeOf(file(() => 0.3, ['LAB_L', ...nms.slice(1).map((n) => `X${n}`)]))).toBe(
      'spectra-none',
    );
    for (const text of ['', 'hello', 'index,pigment,coefficient,400\n'])
      expect(codeOf(text)).toBe('spectra-not-cgats');
  });
  test('wavelengths that do not cover 400 to 700, or come twice', () => {
    const from = (start: number) => nms.map((nm) => `NM${nm + start}`);
    expect(codeOf(file(() => 0.3, from(20)))).toBe('grid-short');
    expect(codeOf(file(() => 0.3, ['NM400', 'NM400', ...from(0).slice(2)]))).toBe('grid-order');
  });
  test('whatever comes in, spectra or a sentence come out', () => {
    const strange = fc.array(
      fc.oneof(
        fc.string(),
        fc.constantFrom(
          'BEGIN_DATA',
          'END_DATA',
          'BEGIN_DATA_FORMAT',
          'END_DATA_FORMAT',
          'NM400 NM700',
          '0.1 0.2',
        ),
      ),
    );
    // A sound file with one line or one cell changed: read or refused.
    const sound = file(() => 0.3).split('\n');
    const changed = fc
      .tuple(fc.nat(sound.length - 1), fc.nat(40), fc.constantFrom('', '0.5', 'x', 'NM700', '-3'))
      .map(([at, cell, word]) =>
        sound
          .map((line, i) => (i === at ? line.split(' ').with(-1, word).join(' ') : line))
          .concat(cell % 2 === 0 ? [] : ['A1 0.1']),
      );
    const counted = { read: 0, refused: 0 };
    fc.assert(
      fc.property(fc.oneof(strange, changed), (text) => {
        const spectra = readCgats(text.join('\n'));
        if (spectra.ok) {
          counted.read++;
          expect(spectra.value.samples.length).toBeGreaterThan(0);
          for (const { R } of spectra.value.samples)
            expect(R.every((r) => r >= 0 && r < 2) && R.length === 36).toBe(true);
        } else {
          counted.refused++;
          expect(spectraFaultWords(spectra.fault, plainNumber)).toMatch(/^.{20,}\.$/s);
        }
      }),
      { numRuns: 300, seed: 5 },
    );
    expect(counted.read).toBeGreaterThan(10);
    expect(counted.refused).toBeGreaterThan(100);
  });
});
