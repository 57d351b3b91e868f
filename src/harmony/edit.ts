import type { Lab } from '../colour/lab.ts';
import { namesOf } from '../colour/words.ts';
import type { Pixels } from '../photo/pixels.ts';
import type { Spot } from '../photo/spot.ts';
import { fail, ok, type Result } from '../result.ts';
import { type GatherFault, type GatherOptions, gather } from './gather.ts';
import { type Gathered, type GatheredColour, type LadderStep, STEPS } from './harmony.ts';
import { NOWHERE } from './labels.ts';

/**
 * A colour that the painter has had a hand in. Every edit gives a new harmony and leaves the old one
 * as it was: keeping that is the undo.
 */
export interface EditedColour extends GatheredColour {
  /** As gathered, where `lab` has since been corrected by eye. */
  readonly asGathered?: Lab;
  /** In words: "by eye". */
  readonly altered?: string;
  /** Gathered by hand from one spot of this many pixels' side. */
  readonly spotSide?: number;
  /** Sheen that shifts with the angle: beyond what paint can do. */
  readonly sheen?: boolean;
}
export interface EditedHarmony extends Gathered {
  readonly colours: readonly EditedColour[];
}

export type EditFault =
  | { readonly code: 'no-such-colour' }
  | { readonly code: 'last-colour' }
  | { readonly code: 'too-many' }
  | { readonly code: 'no-name' }
  | { readonly code: 'name-taken' }
  | { readonly code: 'same-colour' }
  | { readonly code: 'cannot-split' }
  | GatherFault;

/** Colours that a harmony may hold once colours are added by hand. */
export const MOST_BY_HAND = 12;

/** Puts colours in order, by share with accents last, and the label map with them. */
function ordered(harmony: EditedHarmony, colours: EditedColour[], data: Uint8Array): EditedHarmony {
  const order = colours.map((_, i) => i);
  order.sort(
    (p, q) =>
      Number(colours[p]!.accent) - Number(colours[q]!.accent) ||
      colours[q]!.share - colours[p]!.share ||
      p - q,
  );
  const place = new Uint8Array(256).fill(NOWHERE);
  order.forEach((old, now) => {
    place[old] = now;
  });
  return {
    ...harmony,
    colours: order.map((i) => colours[i]!),
    labels: { ...harmony.labels, data: data.map((v) => place[v]!) },
  };
}

/** A name of its own for a colour among others: the name as it is if it is free. */
function freeName(name: string, others: readonly EditedColour[]): string {
  const taken = new Set(others.map((c) => c.name));
  if (!taken.has(name)) return name;
  for (let n = 2; ; n++) if (!taken.has(`${name} ${n}`)) return `${name} ${n}`;
}

/** Gives a colour the painter's own name. */
export function rename(
  harmony: EditedHarmony,
  index: number,
  name: string,
): Result<EditedHarmony, EditFault> {
  if (!harmony.colours[index]) return fail({ code: 'no-such-colour' });
  const own = name.trim();
  if (own === '') return fail({ code: 'no-name' });
  if (harmony.colours.some((c, i) => i !== index && c.name === own))
    return fail({ code: 'name-taken' });
  return ok({
    ...harmony,
    colours: harmony.colours.with(index, { ...harmony.colours[index], name: own }),
  });
}

/** Leaves a colour out; the shares of the others grow in proportion. */
export function drop(harmony: EditedHarmony, index: number): Result<EditedHarmony, EditFault> {
  const gone = harmony.colours[index];
  if (!gone) return fail({ code: 'no-such-colour' });
  if (harmony.colours.length === 1) return fail({ code: 'last-colour' });
  const rest = 1 - gone.share;
  const colours = harmony.colours
    .filter((_, i) => i !== index)
    .map((c) => ({ ...c, share: rest > 0 ? c.share / rest : 1 / (harmony.colours.length - 1) }));
  const data = harmony.labels.data.map((v) =>
    v === NOWHERE || v === index ? NOWHERE : v > index ? v - 1 : v,
  );
  return ok(ordered(harmony, colours, data));
}

/** Makes two colours one: shares are added, ladders mixed by what each holds. */
export function joinTwo(
  harmony: EditedHarmony,
  first: number,
  second: number,
): Result<EditedHarmony, EditFault> {
  const p = harmony.colours[first];
  const q = harmony.colours[second];
  if (!p || !q) return fail({ code: 'no-such-colour' });
  if (first === second) return fail({ code: 'same-colour' });
  const [large, small] = p.share >= q.share ? [p, q] : [q, p];
  const share = p.share + q.share;
  const steps = [large, small].flatMap((c) =>
    c.ladder.map((s) => ({ lab: s.lab, weight: s.share * (share > 0 ? c.share / share : 0.5) })),
  );
  const middle = (i: 0 | 1 | 2) => weightedMedian(steps.map((s) => [s.lab[i], s.weight]));
  const others = harmony.colours.filter((_, i) => i !== first && i !== second);
  const joined: EditedColour = {
    name: large.name,
    lab: [middle(0), middle(1), middle(2)],
    share,
    accent: p.accent && q.accent,
    ladder: remixed(steps, large.ladder),
  };
  const low = Math.min(first, second);
  const high = Math.max(first, second);
  const colours = [...others.slice(0, low), joined, ...others.slice(low)];
  const data = harmony.labels.data.map((v) =>
    v === NOWHERE ? v : v === high ? low : v > high ? v - 1 : v,
  );
  return ok(ordered(harmony, colours, data));
}

/** Between the two values round half of the weight, so that it moves evenly. */
function weightedMedian(values: [value: number, weight: number][]): number {
  values.sort((p, q) => p[0] - q[0]);
  const half = values.reduce((sum, [, w]) => sum + w, 0) / 2;
  let run = 0;
  for (let i = 0; i < values.length; i++) {
    const [value, weight] = values[i]!;
    if (run + weight < half) {
      run += weight;
      continue;
    }
    // Each value stands at the middle of its weight.
    const here = run + weight / 2;
    const next = half < here ? values[i - 1] : values[i + 1];
    if (!next) return value;
    const away = (weight + next[1]) / 2;
    return value + ((next[0] - value) * Math.abs(half - here)) / away;
  }
  return values[0]![0];
}

/** Parts a mixture of steps by lightness at the shares that a ladder has. */
function remixed(
  steps: readonly { lab: Lab; weight: number }[],
  shares: readonly LadderStep[],
): LadderStep[] {
  const sorted = steps.filter((s) => s.weight > 0).sort((p, q) => q.lab[0] - p.lab[0]);
  let at = 0;
  let left = sorted[0]?.weight ?? 0;
  const out: LadderStep[] = [];
  for (let i = 0; i < STEPS.length; i++) {
    let need = shares[i]!.share;
    const sum = [0, 0, 0];
    let taken = 0;
    while (need > 1e-12 && at < sorted.length) {
      const take = Math.min(need, left);
      for (let c = 0; c < 3; c++) sum[c]! += take * sorted[at]!.lab[c]!;
      taken += take;
      need -= take;
      left -= take;
      if (left <= 1e-12) {
        at++;
        left = sorted[at]?.weight ?? 0;
      }
    }
    const lab: Lab =
      taken > 0
        ? [sum[0]! / taken, sum[1]! / taken, sum[2]! / taken]
        : (out[i - 1]?.lab ?? shares[i]!.lab);
    out.push({ step: STEPS[i]!, lab, share: shares[i]!.share });
  }
  return out;
}

/** Parts one colour into two, by looking again at its own pixels; its share is parted as they are. */
export function split(
  harmony: EditedHarmony,
  index: number,
  pixels: Pixels,
  options: Pick<GatherOptions, 'adapt' | 'stopped'> = {},
): Result<EditedHarmony, EditFault> {
  const old = harmony.colours[index];
  if (!old) return fail({ code: 'no-such-colour' });
  if (harmony.colours.length >= MOST_BY_HAND) return fail({ code: 'too-many' });
  const { width, height, data } = harmony.labels;
  const mask = { width, height, data: data.map((v) => (v === index ? 1 : 0)) };
  const again = gather(pixels, { ...options, mask, colours: 2 });
  if (!again.ok) return again;
  const [large, small] = again.value.colours;
  if (!large || !small) return fail({ code: 'cannot-split' });
  const others = harmony.colours.filter((_, i) => i !== index);
  const names = namesOf([large.lab, small.lab]);
  const first = { ...large, name: freeName(names[0]!, others), share: old.share * large.share };
  const colours = harmony.colours.with(index, first);
  colours.push({
    ...small,
    name: freeName(names[1]!, [...others, first]),
    share: old.share * small.share,
    accent: old.accent,
  });
  const parts = again.value.labels;
  const now = data.map((v, i) => {
    if (v !== index) return v;
    const x = Math.floor((((i % width) + 0.5) / width) * parts.width);
    const y = Math.floor(((Math.floor(i / width) + 0.5) / height) * parts.height);
    return parts.data[y * parts.width + x] === 1 ? harmony.colours.length : index;
  });
  return ok(ordered(harmony, colours, now));
}

/**
 * Adds the colour of one spot that was touched. It takes its patch's share from the colours that
 * were there.
 * @param spot of the same photograph, in the light as it was set (photo/spot.ts)
 * @param lab as it looks once the light was set right, where that differs from the spot's own
 */
export function addSpot(
  harmony: EditedHarmony,
  spot: Spot,
  lab: Lab = spot.lab,
): Result<EditedHarmony, EditFault> {
  if (harmony.colours.length >= MOST_BY_HAND) return fail({ code: 'too-many' });
  const { width, height, data } = harmony.labels;
  const index = harmony.colours.length;
  const scale = (v: number, from: number, to: number) => (v / from) * to;
  const left = Math.floor(scale(spot.left, harmony.width, width));
  const top = Math.floor(scale(spot.top, harmony.height, height));
  const right = Math.max(left + 1, Math.round(scale(spot.left + spot.side, harmony.width, width)));
  const bottom = Math.max(top + 1, Math.round(scale(spot.top + spot.side, harmony.height, height)));
  const now = data.slice();
  const lost = new Float64Array(index);
  let seen = 0;
  for (const v of data) if (v !== NOWHERE) seen++;
  for (let y = top; y < Math.min(height, bottom); y++)
    for (let x = left; x < Math.min(width, right); x++) {
      const at = y * width + x;
      if (data[at] !== NOWHERE) lost[data[at]!]!++;
      else seen++;
      now[at] = index;
    }
  // A patch smaller than a cell still counts for no more than it is.
  const cells = (right - left) * (bottom - top);
  const area = ((spot.side * spot.side) / (harmony.width * harmony.height)) * width * height;
  const counts = Math.min(1, area / cells);
  const old = harmony.colours.map((c, i) => Math.max(0, c.share - (counts * lost[i]!) / seen));
  const share = Math.max(0, 1 - old.reduce((sum, s) => sum + s, 0));
  const total = share + old.reduce((sum, s) => sum + s, 0);
  const colours: EditedColour[] = harmony.colours.map((c, i) => ({ ...c, share: old[i]! / total }));
  colours.push({
    name: freeName(namesOf([lab])[0]!, colours),
    lab,
    share: share / total,
    accent: share < 0.02,
    ladder: STEPS.map((step) => ({ step, lab, share: 1 / STEPS.length })),
    spotSide: spot.side,
  });
  return ok(ordered(harmony, colours, now));
}

/**
 * Corrects a colour by eye: what was gathered is kept beside it, the ladder moves with it.
 * @param words what was said of it, "by eye" if nothing
 */
export function correct(
  harmony: EditedHarmony,
  index: number,
  lab: Lab,
  words = 'by eye',
): Result<EditedHarmony, EditFault> {
  const old = harmony.colours[index];
  if (!old) return fail({ code: 'no-such-colour' });
  const [dL, da, db] = lab.map((v, i) => v - old.lab[i]!) as [number, number, number];
  const moved = (s: LadderStep): LadderStep => ({
    ...s,
    lab: [Math.max(0, Math.min(100, s.lab[0] + dL)), s.lab[1] + da, s.lab[2] + db],
  });
  const now: EditedColour = {
    ...old,
    lab,
    ladder: old.ladder.map(moved),
    asGathered: old.asGathered ?? old.lab,
    altered: words,
  };
  return ok({ ...harmony, colours: harmony.colours.with(index, now) });
}

/** Marks a colour as sheen that shifts with the angle, or takes the mark away. */
export function markSheen(
  harmony: EditedHarmony,
  index: number,
  sheen: boolean,
): Result<EditedHarmony, EditFault> {
  const old = harmony.colours[index];
  if (!old) return fail({ code: 'no-such-colour' });
  return ok({ ...harmony, colours: harmony.colours.with(index, { ...old, sheen }) });
}

/** Which colour lives at a place of the photograph, 0…1 of width and height; null where none does. */
export function colourAt({ labels }: Gathered, x: number, y: number): number | null {
  if (!(x >= 0 && x < 1 && y >= 0 && y < 1)) return null;
  const at = Math.floor(y * labels.height) * labels.width + Math.floor(x * labels.width);
  const v = labels.data[at]!;
  return v === NOWHERE ? null : v;
}
