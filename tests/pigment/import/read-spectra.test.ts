import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { guessTable, measuredSwatches } from '../../../src/calibration/measured-samples.ts';
import { BANDS, bandNm, spectrum } from '../../../src/colour/grid.ts';
import { labOf } from '../../../src/colour/lab.ts';
import { sampleFaultWords } from '../../../src/messages/calibration-messages.ts';
import { curvesFaultWords } from '../../../src/messages/shelf-file-faults.ts';
import { plainNumber } from '../../../src/number-format.ts';
import { NO_SURFACE } from '../../../src/optics/surface.ts';
import { readSpectra, spectraCgats, spectraCsv } from '../../../src/pigment/import/read-spectra.ts';
import { STARTER_SURFACE } from '../../../src/pigment/starter-shelf.ts';
import { describeShared, readShared } from '../../shared.ts';
import { remarkWords } from '../remark-words.ts';

const read = (text: string) => {
  const found = readSpectra(text);
  if (!found.ok) throw new Error(curvesFaultWords(found.fault, plainNumber));
  return found.value;
};
const faultOf = (text: string) => {
  const found = readSpectra(text);
  if (found.ok) throw new Error('it was read');
  expect(curvesFaultWords(found.fault, plainNumber)).toMatch(/^["A-Z].{25,}\.$/s);
  return found.fault;
};
const NMS = Array.from({ length: BANDS }, (_, band) => bandNm(band));
const wave = (at: number) => NMS.map((nm) => 0.3 + 0.2 * Math.sin((nm + at) / 60));
const csv = (rows: Record<string, readonly number[]>) =>
  [
    `name,${NMS.join(',')}`,
    ...Object.entries(rows).map(([name, values]) =>
      [name, ...values.map((v) => v.toFixed(4))].join(),
    ),
  ].join('\n');

// CGATS.17 / ISO 28178 in two dialects: the same six patches.
describeShared('the example files', () => {
  const tens = read(readShared('reference/cgats-example-fraction-10nm.txt'));
  const twenties = read(readShared('reference/cgats-example-percent-20nm.txt'));

  test('both give the same curves', () => {
    expect(twenties.samples.map(({ name }) => name)).toEqual(tens.samples.map(({ name }) => name));
    twenties.samples.forEach(({ R }, i) => {
      // At the wavelengths that both have: 390, 410 … to the digits that are printed.
      for (let band = 1; band < BANDS; band += 2)
        expect(R[band]).toBeCloseTo(tens.samples[i]!.R[band]!, 10);
    });
  });

  test.each([
    ['CSV', spectraCsv],
    ['CGATS', spectraCgats],
  ])('exported as %s and imported they are the same to the printed digits', (_, write) => {
    for (const { samples } of [tens, twenties]) {
      const again = read(write(samples)).samples;
      expect(again.map(({ name }) => name)).toEqual(samples.map(({ name }) => name));
      again.forEach(({ R }, i) => {
        R.forEach((v, band) => {
          expect(Math.abs(v - samples[i]!.R[band]!)).toBeLessThanOrEqual(0.5000001e-5);
        });
      });
      // What was printed once is printed the same again.
      expect(write(again)).toBe(write(samples));
    }
  });
});

describe('curves from CSV', () => {
  const plain = csv({ red: wave(0), 'blue, deep': wave(90) }).replace('blue, deep', '"blue, deep"');

  test('samples in rows, names letter for letter', () => {
    const { samples } = read(plain);
    expect(samples.map(({ name }) => name)).toEqual(['red', 'blue, deep']);
    samples[0]!.R.forEach((v, band) => {
      expect(v).toBeCloseTo(wave(0)[band]!, 4);
    });
  });

  test('decimal commas and per cent, semicolons and tabs, CRLF and a byte order mark', () => {
    const wanted = read(plain).samples.map(({ R }) => [...R]);
    const percent = csv({ red: wave(0).map((v) => 100 * v), blue: wave(90).map((v) => 100 * v) });
    for (const mark of [';', '\t']) {
      const text = `\uFEFF# made by hand\r\n${percent
        .replaceAll(',', mark)
        .replaceAll('.', ',')
        .replaceAll('\n', '\r\n')}`;
      read(text).samples.forEach(({ R }, i) => {
        R.forEach((v, band) => {
          expect(v).toBeCloseTo(wanted[i]![band]!, 4);
        });
      });
    }
    expect(remarkWords(read(percent).remarks).join()).toMatch(/per cent/);
  });

  test('samples in columns, and headings as instruments write them', () => {
    const down = [
      'nm;red;blue',
      ...NMS.map((nm, i) => `${nm} nm;${wave(0)[i]!.toFixed(4)};${wave(90)[i]!.toFixed(4)}`),
    ].join('\n');
    const headed = plain.replace(/\b(\d{3})(?=[,\n])/g, 'SPECTRAL_NM$1');
    for (const text of [down, headed])
      read(text).samples.forEach(({ R }, i) => {
        R.forEach((v, band) => {
          expect(v).toBeCloseTo([wave(0), wave(90)][i]![band]!, 4);
        });
      });
  });

  test('bad files are refused, and the place is named', () => {
    expect(faultOf('')).toEqual({ code: 'curves-none' });
    expect(faultOf('some,words\nand,more')).toEqual({ code: 'curves-none' });
    expect(faultOf(plain.replace('0.4', 'x'))).toMatchObject({ code: 'spectra-text' });
    const gap = csv({ red: wave(0) }).replace(/,0\.\d+$/, ',');
    expect(faultOf(gap)).toEqual({ code: 'curves-gap', sample: 'red', nm: 730 });
    expect(faultOf(plain.replace('"blue, deep"', 'red'))).toEqual({
      code: 'curves-twice',
      sample: 'red',
    });
    expect(faultOf(plain.replace('"blue, deep"', ''))).toEqual({ code: 'curves-name', row: 2 });
    const missing = plain.replace(/,\d{3}(,7[0-3]0)+/, '');
    expect(['grid-short', 'grid-coarse', 'curves-none']).toContain(faultOf(missing).code);
    const holed = csv({ red: wave(0) })
      .split('\n')
      .map((line) => line.split(',').toSpliced(15, 5).join(','))
      .join('\n');
    expect(faultOf(holed).code).toBe('grid-coarse');
    expect(faultOf(csv({ red: wave(0).map((v) => v - 0.6) })).code).toBe('spectra-range');
  });

  test('any spectra come back from either form', () => {
    const R = fc.array(fc.double({ min: 0, max: 1.2, noNaN: true }), {
      minLength: BANDS,
      maxLength: BANDS,
    });
    fc.assert(
      fc.property(fc.array(R, { minLength: 1, maxLength: 4 }), (all) => {
        const samples = all.map((values, i) => ({ name: `s ${i}`, R: spectrum<'R'>(values) }));
        for (const write of [spectraCsv, spectraCgats])
          read(write(samples)).samples.forEach((sample, i) => {
            sample.R.forEach((v, band) => {
              expect(v).toBeCloseTo(all[i]![band]!, 4);
            });
          });
      }),
      { numRuns: 30 },
    );
  });
});

describe('the table of samples', () => {
  const pigments = [
    { pigment: 'lead_white', label: 'Lead white', synonyms: ['flake white'] },
    { pigment: 'umber', label: 'Umber' },
    { pigment: 'burnt_umber', label: 'Burnt umber' },
    { pigment: 'ultramarine', label: 'Ultramarine' },
  ];
  const samples = (...names: string[]) =>
    names.map((name) => ({ name, R: spectrum<'R'>(wave(name.length)) }));

  test('is guessed from names', () => {
    const table = guessTable(
      samples(
        'Flake White',
        'burnt-umber',
        'Ultramarine 1:4',
        'ultramarine + burnt umber 2:1',
        'ultramarine, umber',
        'sky',
      ),
      pigments,
      'lead_white',
    );
    const part = (pigment: string, parts: number) => ({ pigment, parts });
    expect(table.map(({ parts }) => parts)).toEqual([
      [part('lead_white', 1)],
      [part('burnt_umber', 1)],
      [part('ultramarine', 1), part('lead_white', 4)],
      [part('ultramarine', 2), part('burnt_umber', 1)],
      [],
      [],
    ]);
  });

  test('makes swatches; what a 45/0 instrument did not see of the gloss is added', () => {
    const spectra = {
      samples: samples('a', 'b'),
      geometry: '45/0',
      specular: 'excluded' as const,
      remarks: [],
    };
    const table = [
      { sample: 'a', parts: [{ pigment: 'umber', parts: 1 }] },
      { sample: 'b', parts: [] },
    ];
    const made = measuredSwatches(spectra, table, STARTER_SURFACE);
    if (!made.ok) throw new Error(sampleFaultWords(made.fault));
    expect(made.value).toHaveLength(1);
    const [swatch] = made.value;
    expect(swatch!.R![5]).toBeCloseTo(spectra.samples[0]!.R[5]! + STARTER_SURFACE.k1, 12);
    expect(swatch!.lab[0]).toBeCloseTo(labOf(swatch!.R!)[0], 6);
    const plain = measuredSwatches({ ...spectra, specular: null }, table, NO_SURFACE);
    expect(plain.ok && plain.value[0]!.R![5]).toBe(spectra.samples[0]!.R[5]);
  });

  test('that cannot be right is refused', () => {
    const spectra = { samples: samples('a'), geometry: null, specular: null, remarks: [] };
    const codeOf = (sample: string, ...parts: number[]) => {
      const table = [{ sample, parts: parts.map((p) => ({ pigment: 'umber', parts: p })) }];
      const made = measuredSwatches(spectra, table, NO_SURFACE);
      if (made.ok) throw new Error('it was taken');
      expect(sampleFaultWords(made.fault)).toMatch(/^[A-Z].{25,}\.$/);
      return made.fault.code;
    };
    expect(codeOf('c', 1)).toBe('sample-unknown');
    expect(codeOf('a', 1, 2)).toBe('sample-parts');
    expect(codeOf('a', 0)).toBe('sample-parts');
    expect(codeOf('a')).toBe('sample-none');
  });
});
