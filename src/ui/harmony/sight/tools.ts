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

/** The tool that is open; one at a time. */
export const tool = signal<Tool | null>(null);
export const keepWay = signal<KeepWay>('rub');
/** Radius of the brush as a share of the longer edge. */
export const brush = signal(0.05);
export const patch = signal<PatchSize>('small');
/** The spot was a grey card. */
export const isCard = signal(false);
/** Where the marker stands. */
export const marker = signal<Place>([0.5, 0.5]);
/** Corners of an outline that is not closed yet. */
export const corners = signal<readonly Place[]>([]);
/** A stroke under way: what will be kept, and where the hand went. */
export const draft = signal<{ readonly mask: Mask; readonly path: readonly Place[] } | null>(null);

/** What is kept, whether or not the stroke has ended. */
export const keptNow = computed<Mask | null>(() => draft.value?.mask ?? look.value.mask);

const maskNow = (): Mask => keptNow.value ?? fullMask(look.value.width, look.value.height);

/** Share of what can be looked at that is kept. */
export const share = computed(() => {
  const { clear } = look.value;
  const all = lookedAt({ mask: null, clear });
  const kept = lookedAt({ mask: keptNow.value, clear });
  if (!kept) return 1;
  return keptShare(kept) / (all ? keptShare(all) : 1);
});

export function open(which: Tool): void {
  batch(() => {
    tool.value = tool.value === which ? null : which;
    corners.value = [];
    draft.value = null;
    isBefore.value = false;
  });
}

// Another photograph begins with no tool in hand.
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

/** What lives at a place: a colour's index, or null. */
export function colourAt([x, y]: Place): number | null {
  const map = labels.value;
  if (!map) return null;
  const column = Math.min(map.width - 1, Math.floor(x * map.width));
  const row = Math.min(map.height - 1, Math.floor(y * map.height));
  const label = map.data[row * map.width + column] ?? 255;
  return label < studied.value.length ? label : null;
}

/** Begins what a touch does. */
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

/** Longer than this, of the photograph's edge, a touch was a drawn line. */
const DRAWN = 0.04;

/** Ends a touch, and does what it is for. */
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

export function cancel(): void {
  draft.value = null;
}

/** A touch at the marker, as by Enter. */
export function act(): void {
  begin(marker.value);
  end();
}

function setBySpot([x, y]: Place): void {
  const grey = isCard.value ? { grey: GREY_CARD } : {};
  isBefore.value = false;
  void gatherAnew({ neutral: { x, y, patch: PATCHES[patch.value], ...grey } });
}

export function closeOutline(path: readonly Place[] = corners.value): void {
  if (path.length < 3) return;
  const mask = keepInside(maskNow(), path);
  corners.value = [];
  keepOnly(mask);
}

export const dropCorner = (): void => {
  corners.value = corners.value.slice(0, -1);
};

export const keepTheMiddle = (): void => keepOnly(keepMiddle(maskNow()));
export const turnAbout = (): void => keepOnly(inverted(maskNow()));
export const keepAll = (): void => keepOnly(null);
