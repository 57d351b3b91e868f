import { describe, expect, test } from 'vitest';
import { nextVersionMetadata } from '../../src/book/merge/next-version.ts';
import { loggedPile } from '../../src/book/schema/calibration-evidence.ts';
import { START } from '../../src/book/schema/hybrid-clock.ts';
import { type Entry, readRecord } from '../../src/book/schema/record.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { parseLab } from '../../src/colour/parse-lab.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { spectraCgats, spectraCsv } from '../../src/pigment/import/read-spectra.ts';
import { STARTER_SURFACE, starterStock } from '../../src/pigment/starter-shelf.ts';
import type { Stock } from '../../src/pigment/stock.ts';
import {
  observedFromSpectrum,
  pileBodyOf,
  predictPile,
} from '../../src/ui/features/calibration/pile-prediction.ts';
import { rowFault, samplesOf } from '../../src/ui/features/calibration/sample-file.ts';
import { NOON } from '../book/made.ts';
import { describeShared, readShared } from '../shared.ts';

const stock = starterStock();
const part = (pigment: string, parts: number) => ({ pigment, parts });
const green = [part('yellow_ochre', 2), part('ultramarine', 1)];
const R = predictReflectance(
  { parts: green.map(({ parts }) => parts) },
  green.map(({ pigment }) => builtInPaintOf(pigment)!),
  STARTER_SURFACE,
);

describe('a file of measured samples', () => {
  const spoken = [
    { name: 'Yellow ochre', R },
    { name: 'ultramarine 1:4', R },
    { name: 'B17', R },
  ];

  test.each([
    ['CGATS', spectraCgats(spoken)],
    ['CSV', spectraCsv(spoken)],
  ])('is told by its samples’ names what they are, as %s', (_, text) => {
    const read = samplesOf(text, 'bench', stock);
    if (!read.ok) throw new Error(read.fault);
    const { samples } = read.value;
    expect(samples.map(({ parts }) => parts)).toEqual([
      [part('yellow_ochre', 1)],
      [part('ultramarine', 1), part('lead_white', 4)],
      [],
    ]);
    for (const { reflectance } of samples)
      reflectance.forEach((v, band) => {
        expect(v).toBeCloseTo(R[band]!, 5);
      });
  });

  test('that cannot be read is refused in a sentence', () => {
    for (const text of ['', 'name,400,500\nA,0.1\n', spectraCgats([spoken[0]!, spoken[0]!])]) {
      const read = samplesOf(text, 'bench', stock);
      expect(read.ok ? '' : read.fault).toMatch(/^["A-Z].{20,}\.$/s);
    }
  });

  test('what is wrong with a row is said of that row', () => {
    const row = (...parts: { pigment: string; parts: number }[]) =>
      rowFault({ name: 'A', parts, reflectance: [] });
    expect(row()).toBe('');
    expect(row(part('smalt', 1), part('lead_white', 0.5))).toBe('');
    for (const wrong of [
      row(part('smalt', 0)),
      row(part('smalt', -1)),
      row(part('smalt', Number.NaN)),
      row(part('smalt', 1), part('smalt', 2)),
    ])
      expect(wrong).toMatch(/above 0, each paint once/);
  });
});

describeShared('the examples of measured charts', () => {
  test.each(['cgats-example-fraction-10nm.txt', 'cgats-example-percent-20nm.txt'])(
    '%s is read as the table shows it',
    (name) => {
      const read = samplesOf(readShared(`reference/${name}`), name, stock);
      if (!read.ok) throw new Error(read.fault);
      expect(read.value.samples).toHaveLength(6);
      // Chart patches are no paints: the painter says what they are, or leaves them out.
      expect(read.value.samples.every(({ parts }) => parts.length === 0)).toBe(true);
    },
  );
});

describe('a pile that came out', () => {
  test('is kept with its lots and what was foreseen on its day, and learnt from', () => {
    const own: Stock = {
      ...stock,
      entries: stock.entries.map((entry) =>
        entry.id === 'ultramarine' ? { ...entry, lot: '9' } : entry,
      ),
    };
    const cameOut = { lab: [40, -5, 8] as const, known: 'photographed' as const, R: null };
    const body = pileBodyOf(green, cameOut, own, { date: '2031-05-17', note: 'for the sleeve' })!;
    expect(body.name).toBe('2 parts yellow ochre and 1 part ultramarine, lot 9');
    expect(body.mixture.partsLab).toEqual(labOf(R));
    expect(body.lots).toEqual([
      { pigment: 'yellow_ochre', lot: '', entry: 'yellow_ochre' },
      { pigment: 'ultramarine', lot: '9', entry: 'ultramarine' },
    ]);
    const marks = nextVersionMetadata('device-0001', START, NOON, []);
    const record = { id: 'pile-0001', kind: 'pile', created: marks.changed, ...marks, body };
    expect(readRecord(record)).toMatchObject({ ok: true });
    const logged = loggedPile(record as unknown as Entry<'pile'>, own)!;
    expect(logged.parts).toEqual(green);
    expect(deltaE00(logged.foreseen, logged.lab)).toBeGreaterThan(3);
    expect(loggedPile(record as unknown as Entry<'pile'>, stock)).toBeNull();
  });

  test('nothing is foreseen of what is no pile', () => {
    expect(predictPile([], stock)).toBeNull();
    expect(predictPile([part('ultramarine', 0)], stock)).toBeNull();
    expect(predictPile([part('ultramarine', 1), part('ultramarine', 2)], stock)).toBeNull();
    expect(predictPile([part('not here', 1)], stock)).toBeNull();
  });

  test('a spectrum measured without gloss is seen with the shelf’s', () => {
    const flat = spectrum<'R'>(new Float64Array(36).fill(0.4));
    expect(observedFromSpectrum(flat, 'excluded', stock).R![7]).toBeCloseTo(
      0.4 + STARTER_SURFACE.k1,
      12,
    );
    expect(observedFromSpectrum(flat, 'included', stock).R![7]).toBeCloseTo(0.4, 12);
    expect(observedFromSpectrum(flat, null, stock).R![7]).toBeCloseTo(0.4, 12);
  });
});

test('CIELAB as people type it', () => {
  expect(parseLab('52 14 -28')).toEqual([52, 14, -28]);
  expect(parseLab(' 52,5; 14,25;−28 ')).toEqual([52.5, 14.25, -28]);
  expect(parseLab('52.5, 14, 28')).toEqual([52.5, 14, 28]);
  for (const wrong of ['', '52 14', '52 14 28 3', '101 0 0', '50 200 0', 'red'])
    expect(parseLab(wrong)).toBeNull();
});
