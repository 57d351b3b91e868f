import { batch, computed, effect, signal } from '@preact/signals';
import {
  brushStroke,
  fullMask,
  type ImagePoint,
  includedShare,
  inverted,
  keepInside,
  keepMiddle,
  type Mask,
} from '../../../photo/mask.ts';
import { harmonyColours, regionLabels, selectColour, specimen } from './current-harmony.ts';
import { isUnbalancedShown, regather, setMask } from './gather-again.ts';
import { gatheringMask, gatheringSettings } from './gathering-settings.ts';
import { addAt } from './manual-corrections.ts';
import { GREY_CARD, PATCH_SIDES, type PatchSize } from './patch-sizes.ts';

export type EditorTool = 'light' | 'keep' | 'hand';
type MaskMode = 'rub' | 'again' | 'outline';

/** The open tool; null for none. */
export const activeTool = signal<EditorTool | null>(null);
/** What the mask tool does: erase, restore, or keep the inside of an outline. */
export const maskMode = signal<MaskMode>('rub');
/** Radius of the brush, fraction of the longer edge. */
export const brushRadius = signal(0.05);
/** Size of the averaged patch. */
export const patchSize = signal<PatchSize>('small');
/** Whether the neutral spot is a grey card. */
export const isGreyCard = signal(false);
/** Position of the marker, fractions 0…1 of width and height. */
export const markerPosition = signal<ImagePoint>([0.5, 0.5]);
/** Corners of the open outline, fractions 0…1. */
export const outlineCorners = signal<readonly ImagePoint[]>([]);
/** The stroke being drawn: its resulting mask and its path; null for none. */
export const currentStroke = signal<{
  readonly mask: Mask;
  readonly path: readonly ImagePoint[];
} | null>(null);

/** Current mask, including the stroke being drawn; null for all kept. */
export const currentMask = computed<Mask | null>(
  () => currentStroke.value?.mask ?? gatheringSettings.value.mask,
);

const currentOrFullMask = (): Mask =>
  currentMask.value ?? fullMask(gatheringSettings.value.width, gatheringSettings.value.height);

/** Kept share, 0…1, of the pixels that are not transparent. */
export const keptPixelShare = computed(() => {
  const { transparentMask: clear } = gatheringSettings.value;
  const all = gatheringMask({ mask: null, transparentMask: clear });
  const kept = gatheringMask({ mask: currentMask.value, transparentMask: clear });
  if (!kept) return 1;
  return includedShare(kept) / (all ? includedShare(all) : 1);
});

/** Opens a tool, or closes it if it is open. */
export function toggleTool(which: EditorTool): void {
  batch(() => {
    activeTool.value = activeTool.value === which ? null : which;
    outlineCorners.value = [];
    currentStroke.value = null;
    isUnbalancedShown.value = false;
  });
}

// Resets the tools for another photograph.
let lastSpecimenId: string | null = null;
effect(() => {
  const id = specimen.value?.id ?? null;
  if (id === lastSpecimenId) return;
  lastSpecimenId = id;
  batch(() => {
    activeTool.value = null;
    markerPosition.value = [0.5, 0.5];
    outlineCorners.value = [];
    currentStroke.value = null;
    isUnbalancedShown.value = false;
  });
});

/** Index of the colour at a position; null if none. */
export function colourIndexAt([x, y]: ImagePoint): number | null {
  const map = regionLabels.value;
  if (!map) return null;
  const column = Math.min(map.width - 1, Math.floor(x * map.width));
  const row = Math.min(map.height - 1, Math.floor(y * map.height));
  const label = map.data[row * map.width + column] ?? 255;
  return label < harmonyColours.value.length ? label : null;
}

/** Starts a touch or stroke. */
export function beginStroke(place: ImagePoint): void {
  markerPosition.value = place;
  if (activeTool.value !== 'keep') return;
  const mask = currentOrFullMask();
  const way = maskMode.value;
  currentStroke.value = {
    mask:
      way === 'outline'
        ? mask
        : brushStroke(mask, [place], brushRadius.value, way === 'rub' ? 0 : 1),
    path: [place],
  };
}

/** Continues it. */
export function continueStroke(place: ImagePoint): void {
  markerPosition.value = place;
  const now = currentStroke.value;
  if (!now) return;
  const way = maskMode.value;
  const last = now.path.at(-1)!;
  currentStroke.value = {
    mask:
      way === 'outline'
        ? now.mask
        : brushStroke(now.mask, [last, place], brushRadius.value, way === 'rub' ? 0 : 1),
    path: [...now.path, place],
  };
}

/** Reach of a path, as a fraction of the edges, above which a touch is a freehand outline. */
const FREEHAND_REACH = 0.04;

/** Ends it, and runs the open tool. Without a tool it selects the colour at the marker. */
export function endTouch(): void {
  const stroked = currentStroke.value;
  currentStroke.value = null;
  const place = markerPosition.value;
  if (activeTool.value === 'light') setBySpot(place);
  else if (activeTool.value === 'hand') void addAt(place, PATCH_SIDES[patchSize.value]);
  else if (activeTool.value === 'keep') endStroke(stroked, place);
  else {
    const colour = colourIndexAt(place);
    if (colour !== null) selectColour(colour);
  }
}

function endStroke(stroked: typeof currentStroke.value, place: ImagePoint): void {
  if (!stroked) return;
  if (maskMode.value !== 'outline') {
    setMask(stroked.mask);
    return;
  }
  const [x, y] = stroked.path[0]!;
  const reach = Math.max(...stroked.path.map(([u, v]) => Math.hypot(u - x, v - y)));
  if (reach <= FREEHAND_REACH) outlineCorners.value = [...outlineCorners.value, place];
  else closeOutline(stroked.path);
}

/** Discards the stroke being drawn. */
export function cancelStroke(): void {
  currentStroke.value = null;
}

/** Acts at the marker, as the Enter key does. */
export function actAtMarker(): void {
  beginStroke(markerPosition.value);
  endTouch();
}

function setBySpot([x, y]: ImagePoint): void {
  const grey = isGreyCard.value ? { grey: GREY_CARD } : {};
  isUnbalancedShown.value = false;
  void regather({ neutral: { x, y, patch: PATCH_SIDES[patchSize.value], ...grey } });
}

/** Keeps only the inside of an outline. Fewer than 3 corners do nothing. */
export function closeOutline(path: readonly ImagePoint[] = outlineCorners.value): void {
  if (path.length < 3) return;
  const mask = keepInside(currentOrFullMask(), path);
  outlineCorners.value = [];
  setMask(mask);
}

/** Removes the latest corner of the open outline. */
export const dropCorner = (): void => {
  outlineCorners.value = outlineCorners.value.slice(0, -1);
};

/** Keeps only the middle of the photograph. */
export const maskToMiddle = (): void => setMask(keepMiddle(currentOrFullMask()));
/** Inverts the mask. */
export const invertMask = (): void => setMask(inverted(currentOrFullMask()));
/** Removes the mask. */
export const clearMask = (): void => setMask(null);
