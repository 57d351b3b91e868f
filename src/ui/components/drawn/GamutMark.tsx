/**
 * Mark of a colour outside the screen's gamut: a turned-down corner, light with a dark edge,
 * visible on any colour.
 *
 * @param x, y the outer corner, at the upper right
 */
export function GamutMark({ x, y, size = 9 }: { x: number; y: number; size?: number }) {
  return (
    <path
      class="nearest-mark"
      d={`M${x} ${y}h${-size}l${size} ${size}z`}
      fill="#fff"
      stroke="#161616"
      stroke-width={size * 0.12}
      stroke-linejoin="round"
    />
  );
}
