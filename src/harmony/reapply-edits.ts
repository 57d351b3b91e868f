import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { type Matrix, multiplyColumn } from '../colour/matrix.ts';
import { labOfLinear, linearOfLab } from '../colour/rgb.ts';
import { UNLABELLED } from '../segmentation/labels.ts';
import {
  correctColourByEye,
  type EditedColour,
  type EditedHarmony,
  freeName,
  MOST_BY_HAND,
  markSheen,
  sortedByShare,
  withColourName,
} from './manual-edits.ts';
import { mergeColours } from './merge-split.ts';

/** Largest change of a colour when slightly more or less of it is included (CIEDE2000). */
const NEAR = 6;
/** Share of one region that has to lie in another for the two to count as the same. */
const WITHIN = 0.6;

/** What changed between the two gatherings. */
interface ReapplyOptions {
  /** From linear sRGB in the old light to the new one; null if the light is unchanged. */
  readonly lightChange: Matrix | null;
  /**
   * Whether manual merges and splits still apply; not if another number of colours was requested.
   */
  readonly keepsShape: boolean;
}

/** Whether the painter changed the colour's name, sheen or appearance. */
const isSaid = ({ altered, sheen, named }: EditedColour): boolean =>
  altered !== undefined || sheen === true || named === true;

/**
 * Reapplies manual edits after the same photograph was gathered again: spots, merges and splits by
 * place, names and sheen by colour, corrections by eye if the light is unchanged.
 * @returns the harmony, and in `lost` the names of colours of which an edit could not be reapplied
 */
export function reapplyEdits(
  old: EditedHarmony,
  now: EditedHarmony,
  { lightChange: turn, keepsShape }: ReapplyOptions,
): { readonly harmony: EditedHarmony; readonly lost: readonly string[] } {
  const seen = (lab: Lab): Lab =>
    turn ? labOfLinear(...multiplyColumn(turn, ...linearOfLab(lab))) : lab;
  let harmony: EditedHarmony = now;
  const lost: string[] = [];
  const cut = new Set<string>();
  for (const [index, colour] of old.colours.entries()) {
    const place = placeOf(old, index, now);
    if (colour.spotSide !== undefined) {
      const share = colour.share * shareLeft(old, place, now);
      const next = extractColour(harmony, place, { ...shown(colour, seen), share });
      if (next) harmony = next;
      else lost.push(colour.name);
    } else if (colour.shaped && !keepsShape) lost.push(colour.name);
    else if (colour.shaped === 'joined') {
      const next = repeatMerge(harmony, place, colour);
      if (next) harmony = next;
      else lost.push(colour.name);
    } else if (colour.shaped === 'parted') {
      const next = repeatSplit(harmony, place, shown(colour, seen), cut);
      if (next) harmony = next;
      else lost.push(colour.name);
    }
  }
  const taken = new Set<string>();
  for (const colour of old.colours) {
    if (!isSaid(colour) || colour.spotSide !== undefined) continue;
    const was = seen(colour.asGathered ?? colour.lab);
    const index = nearest(harmony, was, taken);
    const found = harmony.colours[index];
    if (!found) {
      lost.push(colour.name);
      continue;
    }
    let name = found.name;
    if (colour.named) {
      harmony = orElse(withColourName(harmony, index, colour.name), harmony);
      name = harmony.colours[index]!.name;
    }
    taken.add(name);
    if (colour.sheen) harmony = orElse(markSheen(harmony, index, true), harmony);
    if (colour.altered === undefined) continue;
    // A correction by eye belongs to the appearance in the old light.
    if (turn) lost.push(colour.name);
    else {
      const lab = found.lab.map((v, i) => v + colour.lab[i]! - was[i]!) as [number, number, number];
      harmony = orElse(correctColourByEye(harmony, index, lab, colour.altered), harmony);
    }
  }
  return { harmony, lost: [...new Set(lost)] };
}

const orElse = <T>(result: { ok: true; value: T } | { ok: false }, other: T): T =>
  result.ok ? result.value : other;

/** A colour of the old harmony in the new light, without its correction by eye. */
function shown(colour: EditedColour, seen: (lab: Lab) => Lab): EditedColour {
  const { asGathered: _g, altered: _a, ...plain } = colour;
  const by = (lab: Lab): Lab => {
    const was = colour.asGathered ?? colour.lab;
    return [
      lab[0] + was[0] - colour.lab[0],
      lab[1] + was[1] - colour.lab[1],
      lab[2] + was[2] - colour.lab[2],
    ];
  };
  return {
    ...plain,
    lab: seen(colour.asGathered ?? colour.lab),
    ladder: colour.ladder.map((step) => ({ ...step, lab: seen(by(step.lab)) })),
  };
}

/** Region of an old colour, as included cells of the new label map. */
function placeOf(old: EditedHarmony, index: number, now: EditedHarmony): Int32Array {
  const { width, height, data } = now.labels;
  const from = old.labels;
  const cells: number[] = [];
  for (let y = 0; y < height; y++) {
    const row = Math.floor(((y + 0.5) / height) * from.height) * from.width;
    for (let x = 0; x < width; x++) {
      if (data[y * width + x] === UNLABELLED) continue;
      if (from.data[row + Math.floor(((x + 0.5) / width) * from.width)] === index)
        cells.push(y * width + x);
    }
  }
  return Int32Array.from(cells);
}

/** Factor from an old share to a new one, when the included area has changed. */
function shareLeft(old: EditedHarmony, place: Int32Array, now: EditedHarmony): number {
  const looked = ({ data }: { readonly data: Uint8Array }) =>
    data.reduce((n, v) => n + Number(v !== UNLABELLED), 0) / data.length;
  return place.length === 0 ? 0 : looked(old.labels) / looked(now.labels);
}

/** How many of these cells each colour has. */
function counts({ colours, labels }: EditedHarmony, cells: Iterable<number>): number[] {
  const of = colours.map(() => 0);
  for (const cell of cells) {
    const label = labels.data[cell]!;
    if (label !== UNLABELLED) of[label]!++;
  }
  return of;
}

/**
 * Gives a region its own colour, taken from the colours that hold it; null if empty or too many
 * colours.
 */
function extractColour(
  harmony: EditedHarmony,
  place: Int32Array,
  colour: EditedColour,
): EditedHarmony | null {
  if (place.length === 0 || harmony.colours.length >= MOST_BY_HAND) return null;
  const taken = counts(harmony, place);
  const share = Math.min(colour.share, 0.999);
  const colours: EditedColour[] = harmony.colours.map((c, i) => ({
    ...c,
    share: Math.max(0, c.share - (share * taken[i]!) / place.length),
  }));
  colours.push({ ...colour, share, name: freeName(colour.name, harmony.colours) });
  const all = colours.reduce((sum, c) => sum + c.share, 0);
  const data = harmony.labels.data.slice();
  for (const cell of place) data[cell] = harmony.colours.length;
  return sortedByShare(
    harmony,
    colours.map((c) => ({ ...c, share: c.share / all })),
    data,
  );
}

/**
 * Repeats a merge: merges the colours that lie within the region of the merged one; null if none
 * does.
 */
function repeatMerge(
  harmony: EditedHarmony,
  place: Int32Array,
  colour: EditedColour,
): EditedHarmony | null {
  const here = counts(harmony, place);
  const whole = counts(harmony, harmony.labels.data.keys());
  const names = harmony.colours.flatMap(({ name }, i) =>
    whole[i]! > 0 && here[i]! >= WITHIN * whole[i]! ? [name] : [],
  );
  const [first, ...others] = names;
  if (first === undefined) return null;
  let joined = harmony;
  let name = first;
  for (const other of others) {
    const index = (called: string) => joined.colours.findIndex((c) => c.name === called);
    const [p, q] = [index(name), index(other)];
    name = joined.colours[p]!.share >= joined.colours[q]!.share ? name : other;
    joined = orElse(mergeColours(joined, p, q), joined);
  }
  return marked(joined, name, colour);
}

/**
 * Repeats a split, unless the colours are separate already; null if the part is no longer found.
 * @param cut names of colours that a part was taken from: the rest of such a colour is the other
 *   part
 */
function repeatSplit(
  harmony: EditedHarmony,
  place: Int32Array,
  colour: EditedColour,
  cut: Set<string>,
): EditedHarmony | null {
  if (place.length === 0) return null;
  const here = counts(harmony, place);
  const most = here.indexOf(Math.max(...here));
  const whole = counts(harmony, harmony.labels.data.keys())[most]!;
  const { name, share } = harmony.colours[most]!;
  if (here[most]! < WITHIN * place.length) return null;
  if (here[most]! >= WITHIN * whole)
    return cut.has(name) ? instead(harmony, most, colour) : marked(harmony, name, colour);
  // The name belongs to the part; the rest is named in its own turn.
  const left = name === colour.name ? freeName(name, harmony.colours) : name;
  cut.add(left);
  const renamed = harmony.colours.with(most, { ...harmony.colours[most]!, name: left });
  const part = place.filter((cell) => harmony.labels.data[cell] === most);
  return extractColour({ ...harmony, colours: renamed }, part, {
    ...colour,
    share: (share * part.length) / whole,
  });
}

/** Replaces the rest of a colour by the other part of the split. */
function instead(harmony: EditedHarmony, index: number, colour: EditedColour): EditedHarmony {
  const others = harmony.colours.filter((_, i) => i !== index);
  const { share, accent } = harmony.colours[index]!;
  const part = { ...colour, share, accent, name: freeName(colour.name, others) };
  return { ...harmony, colours: harmony.colours.with(index, part) };
}

/** Restores the mark of a manual merge or split. */
const marked = (harmony: EditedHarmony, name: string, { shaped }: EditedColour): EditedHarmony => ({
  ...harmony,
  colours: harmony.colours.map((c) => (c.name === name && shaped ? { ...c, shaped } : c)),
});

/** Index of the nearest colour within {@link NEAR} that is not taken; −1 if none. */
function nearest({ colours }: EditedHarmony, lab: Lab, taken: ReadonlySet<string>): number {
  let best = -1;
  let least = NEAR;
  colours.forEach((colour, i) => {
    const away = deltaE00(lab, colour.lab);
    if (away < least && !taken.has(colour.name)) {
      least = away;
      best = i;
    }
  });
  return best;
}
