import { drawingRandom, randomBetween } from './drawing-seed.ts';

/** A point for path data, rounded to one decimal. */
const pointText = (x: number, y: number) => `${Math.round(x * 10) / 10} ${Math.round(y * 10) / 10}`;

/** Which ends of a stroke are rough from the bristles; the others are cut straight. */
export interface Ends {
  readonly left: boolean;
  readonly right: boolean;
}

/** Path data of one brush stroke that fills a box, with slightly uneven sides and rough ends. */
export function brushedOutline(
  seed: number,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  ends: Ends = { left: true, right: true },
): string {
  const next = drawingRandom(seed);
  const { x, y, width, height } = box;
  const rough = Math.min(width * 0.09, height * 0.5, 14);
  const side = Math.min(2.2, height * 0.05);
  const points: string[] = [];
  // Bristles reach farthest in the middle of an end, so that no corner sticks out.
  const from = x + (ends.left ? rough * 0.8 : 0);
  const to = x + width - (ends.right ? rough : 0);
  const steps = Math.max(4, Math.round(width / 26));
  for (let k = 0; k <= steps; k++) {
    points.push(pointText(from + ((to - from) * k) / steps, y + randomBetween(next, 0, side)));
  }
  const bristles = Math.max(6, Math.round(height / 2.5));
  const reach = (t: number) => 1 - (2 * t - 1) ** 4;
  if (ends.right) {
    for (let k = 1; k < bristles; k++) {
      const t = k / bristles;
      points.push(pointText(to + rough * reach(t) * randomBetween(next, 0.3, 1), y + height * t));
    }
  }
  for (let k = steps; k >= 0; k--) {
    points.push(
      pointText(from + ((to - from) * k) / steps, y + height - randomBetween(next, 0, side)),
    );
  }
  if (ends.left) {
    for (let k = bristles - 1; k > 0; k--) {
      const t = k / bristles;
      points.push(
        pointText(from - rough * 0.8 * reach(t) * randomBetween(next, 0.55, 1), y + height * t),
      );
    }
  }
  return `M${points.join('L')}Z`;
}

/** Thin marks of single bristles along a stroke, alternately light and dark. */
export function bristles(
  seed: number,
  box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  count: number,
): { readonly d: string; readonly light: boolean }[] {
  const next = drawingRandom(seed ^ 0x5bd1e995);
  return Array.from({ length: count }, (_, k) => {
    const y = box.y + box.height * randomBetween(next, 0.06, 0.94);
    const from = box.x + box.width * randomBetween(next, 0.01, 0.55);
    const to = Math.min(
      box.x + box.width * 0.97,
      from + box.width * randomBetween(next, 0.15, 0.7),
    );
    const bow = randomBetween(next, -1.2, 1.2);
    return {
      d: `M${pointText(from, y)}Q${pointText((from + to) / 2, y + bow)} ${pointText(to, y)}`,
      light: k % 2 === 0,
    };
  });
}
