import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { planOf } from '../../src/calibration/card-svg.ts';
import { deltaE00 } from '../../src/colour/difference.ts';
import { spectrum } from '../../src/colour/grid.ts';
import { labOf } from '../../src/colour/lab.ts';
import { predictReflectance } from '../../src/optics/swatch-residuals.ts';
import { builtInPaintOf } from '../../src/pigment/built-in-curves.ts';
import { spectraCsv } from '../../src/pigment/import/read-spectra.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { photograph } from '../tools/card-photo.ts';
import { jpegOf } from '../tools/card-photographs.ts';
import { expectRefusal, kingcup, scratch } from './run.ts';

const folder = scratch();
const card = join(folder, 'card.svg');
const photo = join(folder, 'card.jpg');
const shelf = join(folder, 'shelf.json');

// The painter's own paints: not the handbook's, but weaker, stronger and darker by a good deal.
const NAMES = ['yellow_ochre', 'red_earth', 'ultramarine'];
const own = (id: string) => {
  const { K, S } = builtInPaintOf(id)!;
  const more = { yellow_ochre: 1.5, red_earth: 0.7, ultramarine: 0.8 }[id] ?? 1;
  return { K: spectrum<'K'>(K.map((k) => k * more)), S };
};
const reflectance = (parts: readonly { pigment: string; parts: number }[]) =>
  predictReflectance(
    { parts: parts.map((part) => part.parts) },
    parts.map(({ pigment }) => own(pigment)),
    STARTER_SURFACE,
  );

test('a card is drawn to standard output, to a file, or with its places as JSON', async () => {
  const asked = ['shelf', 'card', '--paints', NAMES.join(',')];
  const drawn = await kingcup(...asked);
  expect([drawn.status, drawn.stderr]).toEqual([0, '']);
  // White alone, each of three paints alone and with white, and five references.
  const kinds = planOf(drawn.stdout)!.places.map(({ kind }) => kind);
  expect(kinds.filter((kind) => kind === 'paint')).toHaveLength(7);
  expect(kinds).toHaveLength(12);
  const out = join(folder, 'drawn.svg');
  const written = await kingcup(...asked, '--out', out);
  expect(written.stdout).toBe(`${out}: 12 places on A4 paper. Print it at 100 %.\n`);
  expect(readFileSync(out, 'utf8')).toBe(drawn.stdout);
  const { cards } = JSON.parse((await kingcup(...asked, '--json')).stdout);
  expect(cards).toMatchObject([{ page: 1, file: null, svg: drawn.stdout }]);
  expect(cards[0].places).toHaveLength(12);
});

describe('a shelf calibrated on the command line', () => {
  beforeAll(async () => {
    const drawn = await kingcup('shelf', 'card', '--paints', NAMES.join(','), '--out', card);
    expect(drawn.stderr).toBe('');
    const plan = planOf(readFileSync(card, 'utf8'))!;
    const { pixels } = await photograph(plan, ({ parts }) => reflectance(parts), {
      size: 1000,
      tilt: 8,
      turn: 5,
      uneven: 0.08,
    });
    writeFileSync(photo, await jpegOf(pixels));
  }, 60_000);

  test('a photographed card is read, and mixtures change', async () => {
    const run = await kingcup(
      'shelf',
      'read',
      photo,
      '--card',
      card,
      '--out',
      shelf,
      '--json',
      '--date',
      '2026-05-01',
    );
    expect(run.status, run.stderr).toBe(0);
    const found = JSON.parse(run.stdout);
    expect(found.paints.map(({ pigment }: { pigment: string }) => pigment).sort()).toEqual(
      ['lead_white', ...NAMES].sort(),
    );
    for (const paint of found.paints)
      expect(paint).toMatchObject({ known: 'photographed', date: '2026-05-01', rough: false });
    // White once, and each of three paints alone and with white.
    expect(found.swatches).toHaveLength(7);
    for (const swatch of found.swatches) {
      expect(deltaE00(swatch.lab, labOf(reflectance(swatch.parts)))).toBeLessThan(1.5);
      expect(swatch.deltaE00).toBeLessThan(2.5);
    }
    expect(found.suggestions.length).toBeGreaterThan(0);

    const wanted = labOf(
      reflectance([
        { pigment: 'yellow_ochre', parts: 2 },
        { pigment: 'ultramarine', parts: 1 },
        { pigment: 'lead_white', parts: 2 },
      ]),
    );
    const mix = async (...more: string[]) => {
      const answer = await kingcup('mix', '--lab', wanted.join(','), '--json', ...more);
      return JSON.parse(answer.stdout).mixtures[0];
    };
    const after = await mix('--shelf', shelf);
    expect(after.deltaE00).toBeLessThan(2);
    expect(after.recipe).not.toEqual((await mix()).recipe);
  });

  test('in words', async () => {
    const { stdout, status } = await kingcup('shelf', 'read', photo, '--card', card);
    expect(status).toBe(0);
    expect(stdout).toMatch(/What was seen/);
    expect(stdout).toMatch(/Photographed, from/);
    expect(stdout).toMatch(/What to brush out next/);
    expect(stdout).toMatch(/Nothing was kept/);
  });

  test('a file of measured curves', async () => {
    const mixtures: Record<string, { pigment: string; parts: number }[]> = {
      'Lead white': [{ pigment: 'lead_white', parts: 1 }],
      'Yellow ochre': [{ pigment: 'yellow_ochre', parts: 1 }],
      'yellow ochre 1:4': [
        { pigment: 'yellow_ochre', parts: 1 },
        { pigment: 'lead_white', parts: 4 },
      ],
      'Blue thing': [{ pigment: 'ultramarine', parts: 1 }],
    };
    const samples = Object.entries(mixtures).map(([name, parts]) => ({
      name,
      R: reflectance(parts),
    }));
    const file = join(folder, 'curves.csv');
    writeFileSync(file, spectraCsv(samples));
    const out = join(folder, 'measured.json');
    const run = await kingcup(
      'shelf',
      'curves',
      file,
      '--is',
      'Blue thing = ultramarine',
      '--out',
      out,
      '--json',
    );
    expect(run.status, run.stderr).toBe(0);
    const found = JSON.parse(run.stdout);
    expect(found.table.map(({ parts }: { parts: unknown[] }) => parts.length)).toEqual([
      1, 1, 2, 1,
    ]);
    expect(found.swatches).toHaveLength(4);
    for (const { deltaE00: off } of found.swatches) expect(off).toBeLessThan(0.5);
    const ochre = found.paints.find(
      ({ pigment }: { pigment: string }) => pigment === 'yellow_ochre',
    );
    expect(ochre.known).toBe('measured');
    expect((await kingcup('shelf', 'check', out)).status).toBe(0);

    const cgats = await kingcup('shelf', 'curves', file, '--as', 'cgats');
    expect(cgats.stdout).toMatch(/^CGATS\.17\n/);
    writeFileSync(join(folder, 'curves.txt'), cgats.stdout);
    const again = await kingcup('shelf', 'curves', join(folder, 'curves.txt'), '--as', 'csv');
    expect(again.stdout).toBe(readFileSync(file, 'utf8'));
  });

  test('what is wrong is said plainly', async () => {
    expectRefusal(await kingcup('shelf', 'card'), /Name the paints/);
    expectRefusal(await kingcup('shelf', 'card', '--paints', 'moonlight'), /not on this shelf/);
    expectRefusal(await kingcup('shelf', 'card', '--paints', 'smalt', '--tints', '0'), /above 0/);
    expectRefusal(await kingcup('shelf', 'read'), /Name the photograph/);
    expectRefusal(await kingcup('shelf', 'read', photo), /--card/);
    expectRefusal(await kingcup('shelf', 'read', photo, '--card', photo), /not a swatch card/);
    expectRefusal(
      await kingcup('shelf', 'read', join(folder, 'none.jpg'), '--card', card),
      /cannot be opened/,
    );
    expectRefusal(
      await kingcup('shelf', 'read', photo, '--card', card, '--chart', card),
      /go together/,
    );
    expectRefusal(await kingcup('shelf', 'curves', card), /No measured curves/);
    const twice = join(folder, 'twice.csv');
    const row = `0.1,${Array.from({ length: 30 }, () => '0.2').join(',')}`;
    const heading = Array.from({ length: 31 }, (_, i) => 400 + 10 * i).join(',');
    writeFileSync(twice, `name,${heading}\nred,${row}\nred,${row}\n`);
    expectRefusal(await kingcup('shelf', 'curves', twice), /Two samples are called "red"/);
  });
});
