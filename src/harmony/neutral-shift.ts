import { angleDeg, hueTurnDeg, type Lab } from '../colour/lab.ts';

/** C* up to which a neutral only moves along the axis; from {@link HUED} on it only turns. */
const FREE = 7;
const HUED = 8;
/** Steps of the Runge-Kutta integration. */
const ROUNDS = 256;
const DEG = Math.PI / 180;

/**
 * Shifts a near-neutral warmer or cooler. It has no hue to turn, so it moves along the axis between
 * the poles; as it gains a hue (C* from 7 to 8) the shift becomes a turn towards the pole. Both
 * rules form one flow, integrated with fourth-order Runge-Kutta: nothing jumps at the limit, and
 * the opposite flow leads back to the start.
 *
 * @param lab C* under 8, also afterwards
 * @param poleDeg hue angle of the pole
 * @param move length of a full shift along the axis, in C*
 * @param turnDeg a full turn, in degrees
 * @returns the colour, and whether it reached the pole early
 */
export function shiftNeutral(
  lab: Lab,
  poleDeg: number,
  move: number,
  turnDeg: number,
): { readonly lab: Lab; readonly stopped: boolean } {
  const [L, a, b] = lab;
  const towards = [Math.cos(poleDeg * DEG), Math.sin(poleDeg * DEG)] as const;
  const straight: Lab = [L, a + move * towards[0], b + move * towards[1]];
  // A disc is convex: if both ends lie in it, so does the whole path.
  if (Math.hypot(a, b) <= FREE && Math.hypot(straight[1], straight[2]) <= FREE + 1e-12)
    return { lab: straight, stopped: false };

  const toPole = (x: number, y: number): number => hueTurnDeg(angleDeg(x, y), poleDeg);
  const huedAt = (C: number): number => Math.min(1, Math.max(0, (C - FREE) / (HUED - FREE)));
  const flow = (x: number, y: number): readonly [number, number] => {
    const hued = huedAt(Math.hypot(x, y));
    const left = hued === 0 ? 0 : toPole(x, y);
    const turn = Math.abs(left) < 1e-9 ? 0 : hued * turnDeg * DEG * Math.sign(left);
    const along = (1 - hued) * move;
    return [along * towards[0] - turn * y, along * towards[1] + turn * x];
  };
  let [x, y] = [a, b];
  let stopped = false;
  const dt = 1 / ROUNDS;
  for (let round = 0; round < ROUNDS; round++) {
    const before = toPole(x, y);
    const k1 = flow(x, y);
    const k2 = flow(x + (dt / 2) * k1[0], y + (dt / 2) * k1[1]);
    const k3 = flow(x + (dt / 2) * k2[0], y + (dt / 2) * k2[1]);
    const k4 = flow(x + dt * k3[0], y + dt * k3[1]);
    x += (dt / 6) * (k1[0] + 2 * k2[0] + 2 * k3[0] + k4[0]);
    y += (dt / 6) * (k1[1] + 2 * k2[1] + 2 * k3[1] + k4[1]);
    const after = toPole(x, y);
    const C = Math.hypot(x, y);
    // Never pass the pole: a path that crosses its ray, or would with the next step, stays on it.
    const isThere = Math.abs(after) < Math.max(1e-9, huedAt(C) * turnDeg * dt);
    if (C > FREE && (isThere || (Math.abs(before) < 90 && before * after < 0))) {
      [x, y] = [C * towards[0], C * towards[1]];
      stopped = true;
    }
  }
  return { lab: [L, x, y], stopped };
}
