import { look } from './look.ts';
import { PATCHES, sideOn } from './sizes.ts';
import { brush, corners, draft, keepWay, marker, patch, tool } from './tools.ts';

/**
 * Overlay of the current tool on the photograph: marker, patch, brush or outline.
 * @param width, height of the stored photograph, px; the SVG's user units
 * @param isShown whether pointer or keyboard focus is on the photograph
 */
export function Marks({
  width,
  height,
  isShown,
}: {
  width: number;
  height: number;
  isShown: boolean;
}) {
  const open = tool.value;
  const [x, y] = [marker.value[0] * width, marker.value[1] * height];
  const longer = Math.max(width, height);
  const { light } = look.value;
  return (
    <svg class="marks" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {open === 'light' && light?.kind === 'spot' && (
        <Square
          x={light.spot.x * width}
          y={light.spot.y * height}
          side={Math.max(longer * 0.02, 2 * light.spot.radius * longer)}
          isSet
        />
      )}
      {open === 'keep' && keepWay.value === 'outline' && <Outline width={width} height={height} />}
      {isShown && (open === 'light' || open === 'hand') && (
        <>
          <Square x={x} y={y} side={sideOn({ width, height }, patch.value)} />
          {PATCHES[patch.value] < 0.02 && (
            <Cross x={x} y={y} reach={longer / 40} gap={longer / 90} />
          )}
        </>
      )}
      {isShown && open === 'keep' && keepWay.value !== 'outline' && (
        <Twice d={circle(x, y, brush.value * longer)} />
      )}
      {isShown && (open === null || (open === 'keep' && keepWay.value === 'outline')) && (
        <Cross x={x} y={y} reach={longer / 30} gap={longer / 120} />
      )}
    </svg>
  );
}

/** A dark line with a light border, visible on any background. */
const Twice = ({ d }: { d: string }) => (
  <>
    <path d={d} fill="none" stroke="#fff" stroke-width="4" vector-effect="non-scaling-stroke" />
    <path d={d} fill="none" stroke="#111" stroke-width="1.75" vector-effect="non-scaling-stroke" />
  </>
);

const circle = (x: number, y: number, r: number): string =>
  `M${x - r} ${y}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;

function Square({
  x,
  y,
  side,
  isSet = false,
}: {
  x: number;
  y: number;
  side: number;
  isSet?: boolean;
}) {
  const half = side / 2;
  const box = `M${x - half} ${y - half}h${side}v${side}h${-side}Z`;
  return <Twice d={isSet ? `${box}${circle(x, y, side)}` : box} />;
}

const Cross = ({ x, y, reach, gap }: { x: number; y: number; reach: number; gap: number }) => (
  <Twice
    d={`M${x - reach} ${y}H${x - gap}M${x + gap} ${y}H${x + reach}M${x} ${y - reach}V${y - gap}M${x} ${y + gap}V${y + reach}`}
  />
);

function Outline({ width, height }: { width: number; height: number }) {
  const places = draft.value?.path ?? corners.value;
  if (places.length === 0) return null;
  const at = places.map(([x, y]) => [x * width, y * height] as const);
  const line = `M${at.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
  const dot = Math.max(width, height) / 150;
  return (
    <>
      <Twice d={places.length > 2 ? `${line}Z` : line} />
      {!draft.value && at.map(([x, y]) => <Twice key={`${x} ${y}`} d={circle(x, y, dot)} />)}
    </>
  );
}
