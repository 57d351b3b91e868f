import { expect, test } from 'vitest';
import { emptyPlanes } from '../../src/photo/downsample.ts';
import { seededRandom } from '../../src/random.ts';
import {
  boundariesOfNodes,
  boundaryStatistics,
  SUM,
  SUMS_PER_PAIR,
} from '../../src/segmentation/boundaries.ts';

const WIDTH = 40;
const HEIGHT = 34;
/** As many labels as this; one more where nothing is looked at. */
const COUNT = 5;

function scene() {
  const next = seededRandom(3);
  const image = emptyPlanes(WIDTH * HEIGHT);
  const label = new Uint16Array(WIDTH * HEIGHT);
  for (let i = 0; i < label.length; i++) {
    label[i] = Math.floor(next() * (COUNT + 0.3));
    image.L[i] = next();
    image.a[i] = 0.2 * (next() - 0.5);
    image.b[i] = 0.2 * (next() - 0.5);
  }
  return { image, label };
}

/** The sums over all borders by their definition, place by place. */
function plainly({ image: { L, a, b }, label }: ReturnType<typeof scene>): Map<string, number[]> {
  const all = new Map<string, number[]>();
  const at = (x: number, y: number) =>
    x >= 0 && y >= 0 && x < WIDTH && y < HEIGHT && label[y * WIDTH + x]! < COUNT
      ? y * WIDTH + x
      : -1;
  const step = (p: number, q: number) => {
    const [pL, qL] = [Math.max(0.02, L[p]!), Math.max(0.02, L[q]!)];
    const low = Math.min(pL, qL);
    const da = (a[q]! / qL - a[p]! / pL) * low;
    const db = (b[q]! / qL - b[p]! / pL) * low;
    return { L2: (L[q]! - L[p]!) ** 2, C2: da * da + db * db, da, db };
  };
  for (let y = 0; y < HEIGHT; y++)
    for (let x = 0; x < WIDTH; x++)
      for (const [dx, dy] of [
        [1, 0],
        [0, 1],
      ] as const) {
        const [p, q] = [at(x, y), at(x + dx, y + dy)];
        if (p < 0 || q < 0 || label[p] === label[q]) continue;
        const [i, j] = [label[p]!, label[q]!];
        const key = `${Math.min(i, j)} ${Math.max(i, j)}`;
        const sums = all.get(key) ?? new Array<number>(SUMS_PER_PAIR).fill(0);
        all.set(key, sums);
        sums[SUM.meetings]!++;
        // Every second place, as on a chequerboard.
        if ((x + y) % 2 !== 0) continue;
        const room = (n: number) => Math.max(0, Math.min(2, n));
        const before = room(dx ? x : y);
        const after = room(dx ? WIDTH - 2 - x : HEIGHT - 2 - y);
        const near = at(x - before * dx, y - before * dy);
        const far = at(x + (1 + after) * dx, y + (1 + after) * dy);
        if (near < 0 || far < 0) continue;
        const left = at(x - (before + 5) * dx, y - (before + 5) * dy);
        const right = at(x + (6 + after) * dx, y + (6 + after) * dy);
        const hasLeft = left >= 0 && before === 2;
        const hasRight = right >= 0 && after === 2;
        if (!hasLeft && !hasRight) continue;
        const beside = [
          ...(hasLeft ? [step(left, near)] : []),
          ...(hasRight ? [step(far, right)] : []),
        ];
        const mean = (f: (s: ReturnType<typeof step>) => number) =>
          beside.reduce((sum, s) => sum + f(s), 0) / beside.length;
        const across = step(near, far);
        const way = i < j ? 1 : -1;
        sums[SUM.crossings]!++;
        sums[SUM.acrossL]! += across.L2;
        sums[SUM.acrossC]! += across.C2;
        sums[SUM.besideL]! += mean((s) => s.L2);
        sums[SUM.besideC]! += mean((s) => s.C2);
        sums[SUM.turnA]! += way * (across.da - mean((s) => s.da));
        sums[SUM.turnB]! += way * (across.db - mean((s) => s.db));
      }
  return all;
}

test('the sums over borders are those of their definition, every pair of labels once and in order', () => {
  const given = scene();
  const edges = boundaryStatistics(given.image, WIDTH, HEIGHT, given.label, COUNT);
  const plain = plainly(given);
  const keys = Array.from(edges.first, (i, pair) => `${i} ${edges.second[pair]}`);
  // Ten pairs of five labels.
  expect(keys).toHaveLength((COUNT * (COUNT - 1)) / 2);
  expect(keys).toEqual([...plain.keys()].sort());
  keys.forEach((key, pair) => {
    plain.get(key)!.forEach((sum, field) => {
      expect(edges.sums[pair * SUMS_PER_PAIR + field]).toBeCloseTo(sum, 4);
    });
  });
});

test('borders of nodes: what lies inside one falls out, and turning round changes the sign of a turn', () => {
  const { image, label } = scene();
  const edges = boundaryStatistics(image, WIDTH, HEIGHT, label, COUNT);
  // The labels 0 and 3 are one node, in the reverse order of the labels.
  const nodeOf = Uint8Array.of(2, 1, 0, 2, 3);
  const { count, sums } = boundariesOfNodes(edges, nodeOf, 4, new Float64Array(16 * SUMS_PER_PAIR));
  const one = (i: number, j: number, field: number) =>
    sums[(i * count + j) * SUMS_PER_PAIR + field]!;
  const edge = (first: number, second: number, field: number) => {
    const pair = edges.first.findIndex((i, p) => i === first && edges.second[p] === second);
    return edges.sums[pair * SUMS_PER_PAIR + field]!;
  };
  expect(one(0, 2, SUM.meetings)).toBe(edge(0, 2, SUM.meetings) + edge(2, 3, SUM.meetings));
  expect(one(0, 2, SUM.turnA)).toBeCloseTo(edge(2, 3, SUM.turnA) - edge(0, 2, SUM.turnA), 6);
});
