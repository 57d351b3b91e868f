import { gatheringSettings } from '../../state/harmony/gathering-settings.ts';
import { PATCH_SIDES, patchSidePx } from '../../state/harmony/patch-sizes.ts';
import {
  activeTool,
  brushRadius,
  currentStroke,
  markerPosition,
  maskMode,
  outlineCorners,
  patchSize,
} from '../../state/harmony/photograph-tools.ts';

/**
 * Overlay of the current tool on the photograph: marker, patch, brush or outline.
 * @param width, height of the stored photograph, px; the SVG's user units
 * @param isShown whether pointer or keyboard focus is on the photograph
 */
export function ToolOverlay({
  width,
  height,
  isShown,
}: {
  width: number;
  height: number;
  isShown: boolean;
}) {
  const open = activeTool.value;
  const [x, y] = [markerPosition.value[0] * width, markerPosition.value[1] * height];
  const longer = Math.max(width, height);
  const { light } = gatheringSettings.value;
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
      {open === 'keep' && maskMode.value === 'outline' && <Outline width={width} height={height} />}
      {isShown && (open === 'light' || open === 'hand') && (
        <>
          <Square x={x} y={y} side={patchSidePx({ width, height }, patchSize.value)} />
          {PATCH_SIDES[patchSize.value] < 0.02 && (
            <Cross x={x} y={y} reach={longer / 40} gap={longer / 90} />
          )}
        </>
      )}
      {isShown && open === 'keep' && maskMode.value !== 'outline' && (
        <OutlinedPath d={circle(x, y, brushRadius.value * longer)} />
      )}
      {isShown && (open === null || (open === 'keep' && maskMode.value === 'outline')) && (
        <Cross x={x} y={y} reach={longer / 30} gap={longer / 120} />
      )}
    </svg>
  );
}

/** A dark line with a light border, visible on any background. */
const OutlinedPath = ({ d }: { d: string }) => (
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
  return <OutlinedPath d={isSet ? `${box}${circle(x, y, side)}` : box} />;
}

const Cross = ({ x, y, reach, gap }: { x: number; y: number; reach: number; gap: number }) => (
  <OutlinedPath
    d={`M${x - reach} ${y}H${x - gap}M${x + gap} ${y}H${x + reach}M${x} ${y - reach}V${y - gap}M${x} ${y + gap}V${y + reach}`}
  />
);

function Outline({ width, height }: { width: number; height: number }) {
  const places = currentStroke.value?.path ?? outlineCorners.value;
  if (places.length === 0) return null;
  const at = places.map(([x, y]) => [x * width, y * height] as const);
  const line = `M${at.map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}`;
  const dot = Math.max(width, height) / 150;
  return (
    <>
      <OutlinedPath d={places.length > 2 ? `${line}Z` : line} />
      {!currentStroke.value &&
        at.map(([x, y]) => <OutlinedPath key={`${x} ${y}`} d={circle(x, y, dot)} />)}
    </>
  );
}
