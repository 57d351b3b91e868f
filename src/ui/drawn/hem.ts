/**
 * Length of the thread from a pin to the cloth's edge, straight cloth pinned on its upper edge:
 * `angle` from the left arm (0) round below to the right arm (π).
 */
const thread = (angle: number, left: number, right: number, deep: number) => {
  const side = Math.cos(angle) >= 0 ? left : right;
  const over = Math.abs(Math.cos(angle));
  const below = Math.sin(angle);
  return Math.min(
    over > 1e-6 ? side / over : Number.POSITIVE_INFINITY,
    below > 1e-6 ? deep / below : Number.POSITIVE_INFINITY,
  );
};

/**
 * The hem of straight cloth pinned on its upper edge, as the length of each thread, 0…1 of the
 * longest: pinned by a corner one long point, by the middle of an edge two.
 *
 * @param left, right cloth on both sides of the pin
 * @param deep cloth below it
 * @param from, to the part of the cloth from angle to angle
 */
export const hemOf = (left: number, right: number, deep: number, from = 0, to = Math.PI) => {
  const at = (s: number) => thread(from + (to - from) * s, left, right, deep);
  let longest = 0;
  for (let s = 0; s <= 1; s += 0.01) longest = Math.max(longest, at(s));
  return (s: number) => Math.max(0.12, at(s) / longest);
};
