import { expect, test } from 'vitest';
import { spectrum } from '../../../src/colour/grid.ts';
import { labOf } from '../../../src/colour/lab.ts';
import { compileShelf } from '../../../src/mixture/search/compiled-shelf.ts';
import { MixtureEvaluator } from '../../../src/mixture/search/mixture-evaluator.ts';
import { opaque } from '../../../src/optics/opaque.ts';
import { addSurface } from '../../../src/optics/surface.ts';
import { invented } from '../invented.ts';

const stock = compileShelf(invented.paints, invented);
const load = (members: number[], parts: number[]) => {
  const trial = new MixtureEvaluator(stock);
  trial.n = members.length;
  trial.members.set(members);
  trial.x.set(parts.map((p, i) => Math.log(p / stock.paste[members[i]!]!)));
  return trial;
};

test.each([1, 2, 3, 4, 5, 6])('%d paints have the colour that the optics give', (n) => {
  const members = [0, 4, 2, 6, 3, 1].slice(0, n);
  const parts = [7, 1, 2, 3, 0.5, 0.2].slice(0, n);
  const R = opaque(
    parts,
    members.map((m) => invented.paints[m]!.paint),
    spectrum<'R'>(),
  );
  const lab = labOf(addSurface(R, invented.surface));
  const trial = load(members, parts);
  for (const run of ['evaluateColour', 'evaluate'] as const) {
    trial[run]();
    expect(trial.L).toBeCloseTo(lab[0], 8);
    expect(trial.a).toBeCloseTo(lab[1], 8);
    expect(trial.b).toBeCloseTo(lab[2], 8);
  }
});

test('slopes agree with small steps', () => {
  const trial = load([0, 4, 2, 6], [7, 1, 2, 3]);
  trial.evaluate();
  const { L, a, b } = trial;
  const J = Array.from(trial.J);
  const step = 1e-6;
  for (let i = 0; i < 4; i++) {
    trial.x[i]! += step;
    trial.evaluateColour();
    expect((trial.L - L) / step).toBeCloseTo(J[3 * i]!, 3);
    expect((trial.a - a) / step).toBeCloseTo(J[3 * i + 1]!, 3);
    expect((trial.b - b) / step).toBeCloseTo(J[3 * i + 2]!, 3);
    trial.x[i]! -= step;
  }
});

test('a pinch of a paint moves lightness as its slope says', () => {
  const trial = load([0, 2], [3, 1]);
  trial.evaluate();
  const { L } = trial;
  const slopes = new Float64Array(stock.count);
  trial.additionSlopes(1, 0, 0, slopes);
  const total = Math.exp(trial.x[0]!) + Math.exp(trial.x[1]!);
  for (const j of [1, 4, 7]) {
    const more = load([0, 2, j], [3, 1, 1]);
    const share = 1e-6;
    more.x[2] = Math.log(share * total);
    more.evaluateColour();
    expect((more.L - L) / share / slopes[j]!).toBeCloseTo(1, 3);
  }
});
