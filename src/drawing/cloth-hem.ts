/**
 * Length of the thread from the pin to the cloth's edge, for straight cloth pinned on its upper
 * edge.
 *
 * @param angle of the thread: 0 (left arm), round below, to π (right arm)
 */
const threadLength = (angle: number, left: number, right: number, deep: number) => {
  const side = Math.cos(angle) >= 0 ? left : right;
  const over = Math.abs(Math.cos(angle));
  const below = Math.sin(angle);
  return Math.min(
    over > 1e-6 ? side / over : Number.POSITIVE_INFINITY,
    below > 1e-6 ? deep / below : Number.POSITIVE_INFINITY,
  );
};

/**
 * Hem of straight cloth pinned on its upper edge, as thread lengths relative to the longest: one
 * long point if pinned by a corner, two by the middle of an edge.
 *
 * @param left, right cloth on each side of the pin
 * @param deep cloth below the pin, in the same unit
 * @param from, to angles between which there is cloth, radians
 * @returns length of the thread at position s (0…1), at least 0.12
 */
export const hemOf = (left: number, right: number, deep: number, from = 0, to = Math.PI) => {
  const at = (s: number) => threadLength(from + (to - from) * s, left, right, deep);
  let longest = 0;
  for (let s = 0; s <= 1; s += 0.01) longest = Math.max(longest, at(s));
  return (s: number) => Math.max(0.12, at(s) / longest);
};
