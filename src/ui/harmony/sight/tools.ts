import { batch, computed, effect, signal } from '@preact/signals';
import {
  fullMask,
  inverted,
  keepInside,
  keepMiddle,
  keptShare,
  type Mask,
  type Place,
  stroke,
} from '../../../photo/mask.ts';
import { choose, labels, specimen, studied } from '../state.ts';
import { gatherAnew, isBefore, keepOnly } from './gathered.ts';
import { addAt } from './hand.ts';
import { look, lookedAt } from './look.ts';
import { GREY_CARD, PATCHES, type PatchSize } from './sizes.ts';

export type Tool = 'light' | 'keep' | 'hand';
export type KeepWay = 'rub' | 'again' | 'outline';

/** The open tool; null for none. */
export const tool = signal<Tool | null>(null);
/** What the mask tool does: erase, restore, or keep the inside of an outline. */
export const keepWay = signal<KeepWay>('rub');
/** Radius of the brush, fraction of the longer edge. */
export const brush = signal(0.05);
/** Size of the averaged patch. */
export const patch = signal<PatchSize>('small');
/** Whether the neutral spot is a grey card. */
export const isCard = signal(false);
/** Position of the marker, fractions 0…1 of width and height. */
export const marker = signal<Place>([0.5, 0.5]);
/** Corners of the open outline, fractions 0…1. */
export const corners = signal<readonly Place[]>([]);
/** The stroke being drawn: its resulting mask and its path; null for none. */
export const draft = signal<{ readonly mask: Mask; readonly path: readonly Place[] } | null>(null);

/** Current mask, including the stroke being drawn; null for all kept. */
export const keptNow = computed<Mask | null>(() => draft.value?.mask ?? look.value.mask);

const maskNow = (): Mask => keptNow.value ?? fullMask(look.value.width, look.value.height);

/** Kept share, 0…1, of the pixels that are not transparent. */
export const share = computed(() => {
  const { clear } = look.value;
  const all = lookedAt({ mask: null, clear });
  const kept = lookedAt({ mask: keptNow.value, clear });
  if (!kept) return 1;
  return keptShare(kept) / (all ? keptShare(all) : 1);
});

/** Opens a tool, or closes it if it is open. */
export function open(which: Tool): void {
  batch(() => {
    tool.value = tool.value === which ? null : which;
    corners.value = [];
    draft.value = null;
    isBefore.value = false;
  });
}

// Resets the tools for another photograph.
let of: string | null = null;
effect(() => {
  const id = specimen.value?.id ?? null;
  if (id === of) return;
  of = id;
  batch(() => {
    tool.value = null;
    marker.value = [0.5, 0.5];
    corners.value = [];
    draft.value = null;
    isBefore.value = false;
  });
});

/** Index of the colour at a position; null if none. */
export function colourAt([x, y]: Place): number | null {
  const map = labels.value;
  if (!map) return null;
  const column = Math.min(map.width - 1, Math.floor(x * map.width));
  const row = Math.min(map.height - 1, Math.floor(y * map.height));
  const label = map.data[row * map.width + column] ?? 255;
  return label < studied.value.length ? label : null;
}

/** Starts a touch or stroke. */
export function begin(place: Place): void {
  marker.value = place;
  if (tool.value !== 'keep') return;
  const mask = maskNow();
  const way = keepWay.value;
  draft.value = {
    mask: way === 'outline' ? mask : stroke(mask, [place], brush.value, way === 'rub' ? 0 : 1),
    path: [place],
  };
}

/** Continues it. */
export function move(place: Place): void {
  marker.value = place;
  const now = draft.value;
  if (!now) return;
  const way = keepWay.value;
  const last = now.path.at(-1)!;
  draft.value = {
    mask:
      way === 'outline'
        ? now.mask
        : stroke(now.mask, [last, place], brush.value, way === 'rub' ? 0 : 1),
    path: [...now.path, place],
  };
}

/** Reach of a path, as a fraction of the edges, above which a touch is a freehand outline. */
const DRAWN = 0.04;

/** Ends it, and runs the open tool. Without a tool it selects the colour at the marker. */
export function end(): void {
  const stroked = draft.value;
  draft.value = null;
  const place = marker.value;
  if (tool.value === 'light') setBySpot(place);
  else if (tool.value === 'hand') void addAt(place, PATCHES[patch.value]);
  else if (tool.value === 'keep') endStroke(stroked, place);
  else {
    const colour = colourAt(place);
    if (colour !== null) choose(colour);
  }
}

function endStroke(stroked: typeof draft.value, place: Place): void {
  if (!stroked) return;
  if (keepWay.value !== 'outline') {
    keepOnly(stroked.mask);
    return;
  }
  const [x, y] = stroked.path[0]!;
  const reach = Math.max(...stroked.path.map(([u, v]) => Math.hypot(u - x, v - y)));
  if (reach <= DRAWN) corners.value = [...corners.value, place];
  else closeOutline(stroked.path);
}

/** Discards the stroke being drawn. */
export function cancel(): void {
  draft.value = null;
}

/** Acts at the marker, as the Enter key does. */
export function act(): void {
  begin(marker.value);
  end();
}

function setBySpot([x, y]: Place): void {
  const grey = isCard.value ? { grey: GREY_CARD } : {};
  isBefore.value = false;
  void gatherAnew({ neutral: { x, y, patch: PATCHES[patch.value], ...grey } });
}

/** Keeps only the inside of an outline. Fewer than 3 corners do nothing. */
export function closeOutline(path: readonly Place[] = corners.value): void {
  if (path.length < 3) return;
  const mask = keepInside(maskNow(), path);
  corners.value = [];
  keepOnly(mask);
}

/** Removes the latest corner of the open outline. */
export const dropCorner = (): void => {
  corners.value = corners.value.slice(0, -1);
};

/** Keeps only the middle of the photograph. */
export const keepTheMiddle = (): void => keepOnly(keepMiddle(maskNow()));
/** Inverts the mask. */
export const turnAbout = (): void => keepOnly(inverted(maskNow()));
/** Removes the mask. */
export const keepAll = (): void => keepOnly(null);
