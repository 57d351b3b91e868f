import { readFileSync, writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { BUILT_IN_CURVES, builtInCurveOf } from '../../src/pigment/built-in-curves.ts';
import { paintOf } from '../../src/pigment/curve-model.ts';
import { masstone } from '../../src/pigment/masstone.ts';
import { STARTER_SURFACE } from '../../src/pigment/starter-shelf.ts';
import { author, BRIEFS } from '../tools/pigment-author.ts';
import { mixed, paint } from '../tools/pigment-mixing.ts';

const WRITE = process.env.KINGCUP_WRITE === '1';
const shown = (lab: readonly (number | null)[]) => lab.map((x) => x?.toFixed(1) ?? '-').join(' ');

// KINGCUP_WRITE=1 authors the curves anew; otherwise this says whether they are still what the tool makes.
describe('curves from their briefs', () => {
  const made = BRIEFS.map((brief) => ({ brief, curve: author(brief, paint('titanium_white')) }));

  test.runIf(WRITE)('write the curves', () => {
    const path = resolve(import.meta.dirname, '../../src/pigment/data/curves.json');
    const lines = readFileSync(path, 'utf8').split('\n');
    const written = lines.map((line) => {
      const id = /^\s*\{"id": "(\w+)"/.exec(line)?.[1];
      const found = made.find(({ brief }) => brief.id === id);
      if (found === undefined) return line;
      const { id: _, name, starter } = builtInCurveOf(found.brief.id)!;
      const row = { id, name, starter, lnK: found.curve.lnK, lnS: found.curve.lnS };
      const text = JSON.stringify(row).replace(/(?<=[\w"\]}]),(?=["{])|(?<="):/g, '$& ');
      return `  ${text}${line.endsWith(',') ? ',' : ''}`;
    });
    writeFileSync(path, written.join('\n'));
  });

  test('every curve but the unit of all others has a brief', () => {
    expect(BRIEFS.map(({ id }) => id).toSorted()).toEqual(
      BUILT_IN_CURVES.map(({ id }) => id)
        .filter((id) => id !== 'titanium_white')
        .toSorted(),
    );
  });

  test.each(made)('$brief.id', ({ brief, curve }) => {
    const again = masstone(paintOf(curve), STARTER_SURFACE);
    if (!WRITE) expect(deltaE00(again, mixed({ [brief.id]: 1 }))).toBeLessThan(0.5);
    const { masstone: mass, tint4, tint16 } = brief.targets;
    const colours = [
      [mass, 0],
      [tint4, 4],
      [tint16, 16],
    ] as const;
    const wished = colours.filter(([target]) => target !== undefined);
    expect(wished.length).toBeGreaterThanOrEqual(1);
    for (const [given, white] of wished) {
      const target = given!;
      const lab = mixed({ [brief.id]: 1, titanium_white: white });
      const wanted = target.map((value, axis) => value ?? lab[axis]!) as unknown as Lab;
      const difference = deltaE00(lab, wanted);
      console.log(
        `${brief.id} 1:${white} ${shown(lab)}, wanted ${shown(target)}: ${difference.toFixed(1)}`,
      );
      expect(difference).toBeLessThan(4);
    }
  });
});

// The unit of every K and S: titanium-white paste, mean S over 450-650 nm = 1.
test('titanium white scatters 1 in the mean over 450 to 650 nm', () => {
  const S = [...paint('titanium_white').S].slice(7, 28);
  expect(S.reduce((sum, s) => sum + s, 0) / S.length).toBeCloseTo(1, 3);
});
