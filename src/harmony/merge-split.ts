import { distinctNamesOf } from '../colour/describe-colour.ts';
import type { Lab } from '../colour/lab.ts';
import type { Pixels } from '../photo/pixels.ts';
import type { Spot } from '../photo/spot-sample.ts';
import { fail, ok, type Result } from '../result.ts';
import { UNLABELLED } from '../segmentation/labels.ts';
import { type GatherOptions, gather } from './gather.ts';
import { LADDER_STEPS, type LadderStep } from './harmony.ts';
import {
  type EditedColour,
  type EditedHarmony,
  type EditFault,
  freeName,
  MOST_BY_HAND,
  sortedByShare,
} from './manual-edits.ts';

/** Merges two colours: shares add up, and ladders mix in proportion to them. */
export function mergeColours(
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
    ladder: mixLadders(steps, large.ladder),
    ...(large.named ? { named: true } : {}),
    shaped: 'joined',
  };
  const low = Math.min(first, second);
  const high = Math.max(first, second);
  const colours = [...others.slice(0, low), joined, ...others.slice(low)];
  const data = harmony.labels.data.map((v) =>
    v === UNLABELLED ? v : v === high ? low : v > high ? v - 1 : v,
  );
  return ok(sortedByShare(harmony, colours, data));
}

/**
 * Weighted median, interpolated between the two values around half of the weight, so that it
 * changes continuously.
 */
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
    // Each value sits at the middle of its weight.
    const here = run + weight / 2;
    const next = half < here ? values[i - 1] : values[i + 1];
    if (!next) return value;
    const away = (weight + next[1]) / 2;
    return value + ((next[0] - value) * Math.abs(half - here)) / away;
  }
  return values[0]![0];
}

/** Divides a mixture of steps by lightness at the shares of a ladder. */
function mixLadders(
  steps: readonly { lab: Lab; weight: number }[],
  shares: readonly LadderStep[],
): LadderStep[] {
  const sorted = steps.filter((s) => s.weight > 0).sort((p, q) => q.lab[0] - p.lab[0]);
  let at = 0;
  let left = sorted[0]?.weight ?? 0;
  const out: LadderStep[] = [];
  for (let i = 0; i < LADDER_STEPS.length; i++) {
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
    out.push({ step: LADDER_STEPS[i]!, lab, share: shares[i]!.share });
  }
  return out;
}

/**
 * Splits one colour in two by gathering its own pixels again; its share is divided in proportion.
 * @param pixels of the same photograph
 * @returns a fault if the colour is uniform, the harmony is full or the job is stopped
 */
export function splitColourInTwo(
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
  const names = distinctNamesOf([large.lab, small.lab]);
  const first = {
    ...large,
    name: freeName(names[0]!, others),
    share: old.share * large.share,
    shaped: 'parted' as const,
  };
  const colours = harmony.colours.with(index, first);
  colours.push({
    ...small,
    name: freeName(names[1]!, [...others, first]),
    share: old.share * small.share,
    accent: old.accent,
    shaped: 'parted',
  });
  const parts = again.value.labels;
  const now = data.map((v, i) => {
    if (v !== index) return v;
    const x = Math.floor((((i % width) + 0.5) / width) * parts.width);
    const y = Math.floor(((Math.floor(i / width) + 0.5) / height) * parts.height);
    return parts.data[y * parts.width + x] === 1 ? harmony.colours.length : index;
  });
  return ok(sortedByShare(harmony, colours, now));
}

/**
 * Adds the colour of a spot; its share is taken from the colours that were there.
 * @param spot of the same photograph (photo/white-balance.ts)
 * @param lab its colour after white balance, if that differs from the spot's own
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
  for (const v of data) if (v !== UNLABELLED) seen++;
  for (let y = top; y < Math.min(height, bottom); y++)
    for (let x = left; x < Math.min(width, right); x++) {
      const at = y * width + x;
      if (data[at] !== UNLABELLED) lost[data[at]!]!++;
      else seen++;
      now[at] = index;
    }
  // A patch smaller than a cell counts only its own area.
  const cells = (right - left) * (bottom - top);
  const area = ((spot.side * spot.side) / (harmony.width * harmony.height)) * width * height;
  const counts = Math.min(1, area / cells);
  const old = harmony.colours.map((c, i) => Math.max(0, c.share - (counts * lost[i]!) / seen));
  const share = Math.max(0, 1 - old.reduce((sum, s) => sum + s, 0));
  const total = share + old.reduce((sum, s) => sum + s, 0);
  const colours: EditedColour[] = harmony.colours.map((c, i) => ({ ...c, share: old[i]! / total }));
  colours.push({
    name: freeName(distinctNamesOf([lab])[0]!, colours),
    lab,
    share: share / total,
    accent: share < 0.02,
    ladder: LADDER_STEPS.map((step) => ({ step, lab, share: 1 / LADDER_STEPS.length })),
    spotSide: spot.side,
  });
  return ok(sortedByShare(harmony, colours, now));
}
