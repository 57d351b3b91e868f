/**
 * The mark of a colour that this screen cannot show: a corner turned down, light with a dark edge, so that
 * it is seen on any colour.
 *
 * @param x the outer corner, to the right and above
 */
export function NearestMark({ x, y, size = 9 }: { x: number; y: number; size?: number }) {
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
