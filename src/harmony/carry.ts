import { deltaE00 } from '../colour/difference.ts';
import type { Lab } from '../colour/lab.ts';
import { applied, type Matrix } from '../colour/matrix.ts';
import { labOfLinear, linearOfLab } from '../colour/rgb.ts';
import {
  correct,
  type EditedColour,
  type EditedHarmony,
  freeName,
  MOST_BY_HAND,
  markSheen,
  ordered,
  rename,
} from './edit.ts';
import type { Gathered } from './harmony.ts';
import { NOWHERE } from './labels.ts';
import { joinTwo } from './reshape.ts';

/** As far as one thing's colour may move when a little more or less of it is looked at (CIEDE2000). */
const NEAR = 6;
/** Share of a place that has to lie in another for the two to be one. */
const WITHIN = 0.6;

export interface Carrying {
  /** From linear sRGB in the old light to the new one; null where the light is the same. */
  readonly turn: Matrix | null;
  /** Whether joinings and partings still hold: not where more or fewer colours were asked for. */
  readonly keepsShape: boolean;
}

/** Whether something was said of a colour, whatever its shape. */
const isSaid = ({ altered, sheen, named }: EditedColour): boolean =>
  altered !== undefined || sheen === true || named === true;

/**
 * What the painter's hand did to a harmony, done again to the same photograph gathered anew: spots,
 * joinings and partings in their places, names and sheen on the same colours, corrections by eye where
 * the light is the same.
 * @returns lost: names of the colours of which something could not be carried over
 */
export function carried(
  old: EditedHarmony,
  now: Gathered,
  { turn, keepsShape }: Carrying,
): { readonly harmony: EditedHarmony; readonly lost: readonly string[] } {
  const seen = (lab: Lab): Lab => (turn ? labOfLinear(...applied(turn, ...linearOfLab(lab))) : lab);
  let harmony: EditedHarmony = now;
  const lost: string[] = [];
  const cut = new Set<string>();
  for (const [index, colour] of old.colours.entries()) {
    const place = placeOf(old, index, now);
    if (colour.spotSide !== undefined) {
      const share = colour.share * shareLeft(old, place, now);
      const next = carved(harmony, place, { ...shown(colour, seen), share });
      if (next) harmony = next;
      else lost.push(colour.name);
    } else if (colour.shaped && !keepsShape) lost.push(colour.name);
    else if (colour.shaped === 'joined') {
      const next = joinedWithin(harmony, place, colour);
      if (next) harmony = next;
      else lost.push(colour.name);
    } else if (colour.shaped === 'parted') {
      const next = partedAt(harmony, place, shown(colour, seen), cut);
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
      harmony = orElse(rename(harmony, index, colour.name), harmony);
      name = harmony.colours[index]!.name;
    }
    taken.add(name);
    if (colour.sheen) harmony = orElse(markSheen(harmony, index, true), harmony);
    if (colour.altered === undefined) continue;
    // What was said by eye was said of how it looked in the old light.
    if (turn) lost.push(colour.name);
    else {
      const lab = found.lab.map((v, i) => v + colour.lab[i]! - was[i]!) as [number, number, number];
      harmony = orElse(correct(harmony, index, lab, colour.altered), harmony);
    }
  }
  return { harmony, lost: [...new Set(lost)] };
}

const orElse = <T>(result: { ok: true; value: T } | { ok: false }, other: T): T =>
  result.ok ? result.value : other;

/** A colour of the old harmony as it is seen now. */
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

/** Where a colour of the old harmony lived, as cells of the new label map that are looked at. */
function placeOf(old: EditedHarmony, index: number, now: Gathered): Int32Array {
  const { width, height, data } = now.labels;
  const from = old.labels;
  const cells: number[] = [];
  for (let y = 0; y < height; y++) {
    const row = Math.floor(((y + 0.5) / height) * from.height) * from.width;
    for (let x = 0; x < width; x++) {
      if (data[y * width + x] === NOWHERE) continue;
      if (from.data[row + Math.floor(((x + 0.5) / width) * from.width)] === index)
        cells.push(y * width + x);
    }
  }
  return Int32Array.from(cells);
}

/** What a share of the old harmony is of the new one, where part of either is no longer looked at. */
function shareLeft(old: EditedHarmony, place: Int32Array, now: Gathered): number {
  const looked = ({ data }: { readonly data: Uint8Array }) =>
    data.reduce((n, v) => n + Number(v !== NOWHERE), 0) / data.length;
  return place.length === 0 ? 0 : looked(old.labels) / looked(now.labels);
}

/** How many of some cells each colour has. */
function counts({ colours, labels }: EditedHarmony, cells: Iterable<number>): number[] {
  const of = colours.map(() => 0);
  for (const cell of cells) {
    const label = labels.data[cell]!;
    if (label !== NOWHERE) of[label]!++;
  }
  return of;
}

/** Takes a place out of the colours that have it, for a colour of its own; null where it cannot. */
function carved(
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
  return ordered(
    harmony,
    colours.map((c) => ({ ...c, share: c.share / all })),
    data,
  );
}

/** Joins again what lies within the place of what was joined; null where nothing does. */
function joinedWithin(
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
    joined = orElse(joinTwo(joined, p, q), joined);
  }
  return marked(joined, name, colour);
}

/**
 * Parts again what was parted, unless it is apart already; null where it is not seen any more.
 * @param cut names of colours that a part was taken from: what is left of one is the other part
 */
function partedAt(
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
  // The name belongs to the part; what is left gets its own when its turn comes.
  const left = name === colour.name ? freeName(name, harmony.colours) : name;
  cut.add(left);
  const renamed = harmony.colours.with(most, { ...harmony.colours[most]!, name: left });
  const part = place.filter((cell) => harmony.labels.data[cell] === most);
  return carved({ ...harmony, colours: renamed }, part, {
    ...colour,
    share: (share * part.length) / whole,
  });
}

/** Puts the other part of a colour in place of what is left of it. */
function instead(harmony: EditedHarmony, index: number, colour: EditedColour): EditedHarmony {
  const others = harmony.colours.filter((_, i) => i !== index);
  const { share, accent } = harmony.colours[index]!;
  const part = { ...colour, share, accent, name: freeName(colour.name, others) };
  return { ...harmony, colours: harmony.colours.with(index, part) };
}

/** Marks a colour as shaped by hand, as it was. */
const marked = (harmony: EditedHarmony, name: string, { shaped }: EditedColour): EditedHarmony => ({
  ...harmony,
  colours: harmony.colours.map((c) => (c.name === name && shaped ? { ...c, shaped } : c)),
});

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
