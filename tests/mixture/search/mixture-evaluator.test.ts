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
  const evaluator = new MixtureEvaluator(stock);
  evaluator.n = members.length;
  evaluator.members.set(members);
  evaluator.x.set(parts.map((p, i) => Math.log(p / stock.paste[members[i]!]!)));
  return evaluator;
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
  const evaluator = load(members, parts);
  for (const run of ['evaluateColour', 'evaluate'] as const) {
    evaluator[run]();
    expect(evaluator.L).toBeCloseTo(lab[0], 8);
    expect(evaluator.a).toBeCloseTo(lab[1], 8);
    expect(evaluator.b).toBeCloseTo(lab[2], 8);
  }
});

test('slopes agree with small steps', () => {
  const evaluator = load([0, 4, 2, 6], [7, 1, 2, 3]);
  evaluator.evaluate();
  const { L, a, b } = evaluator;
  const J = Array.from(evaluator.J);
  const step = 1e-6;
  for (let i = 0; i < 4; i++) {
    evaluator.x[i]! += step;
    evaluator.evaluateColour();
    expect((evaluator.L - L) / step).toBeCloseTo(J[3 * i]!, 3);
    expect((evaluator.a - a) / step).toBeCloseTo(J[3 * i + 1]!, 3);
    expect((evaluator.b - b) / step).toBeCloseTo(J[3 * i + 2]!, 3);
    evaluator.x[i]! -= step;
  }
});

test('a pinch of a paint moves lightness as its slope says', () => {
  const evaluator = load([0, 2], [3, 1]);
  evaluator.evaluate();
  const { L } = evaluator;
  const slopes = new Float64Array(stock.count);
  evaluator.additionSlopes(1, 0, 0, slopes);
  const total = Math.exp(evaluator.x[0]!) + Math.exp(evaluator.x[1]!);
  for (const j of [1, 4, 7]) {
    const more = load([0, 2, j], [3, 1, 1]);
    const share = 1e-6;
    more.x[2] = Math.log(share * total);
    more.evaluateColour();
    expect((more.L - L) / share / slopes[j]!).toBeCloseTo(1, 3);
  }
});
