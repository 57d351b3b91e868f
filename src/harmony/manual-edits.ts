import type { Lab } from '../colour/lab.ts';
import { fail, ok, type Result } from '../result.ts';
import { UNLABELLED } from '../segmentation/labels.ts';
import type { GatherFault } from './gather.ts';
import type { Gathered, GatheredColour, LadderStep } from './harmony.ts';

/**
 * A colour with manual edits. Every edit returns a new harmony and leaves the old one unchanged, so
 * the old one can serve as undo.
 */
export interface EditedColour extends GatheredColour {
  /** The gathered colour, if `lab` was corrected by eye. */
  readonly asGathered?: Lab;
  /** How it was changed, in words: "by eye". */
  readonly altered?: string;
  /** Side in pixels of the spot that the colour was picked from by hand. */
  readonly spotSide?: number;
  /** Sheen that shifts with the viewing angle: beyond what paint can do. */
  readonly sheen?: boolean;
  /** The painter gave the name. */
  readonly named?: boolean;
  /** Merged from two by hand, or split from one. */
  readonly shaped?: 'joined' | 'parted';
}
/** A harmony with manual edits. */
export interface EditedHarmony extends Omit<Gathered, 'colours' | 'remarks'> {
  readonly colours: readonly EditedColour[];
}

/** Why an edit is not possible. */
export type EditFault =
  | { readonly code: 'no-such-colour' }
  | { readonly code: 'last-colour' }
  | { readonly code: 'too-many' }
  | { readonly code: 'no-name' }
  | { readonly code: 'name-taken' }
  | { readonly code: 'same-colour' }
  | { readonly code: 'cannot-split' }
  | GatherFault;

/** Most colours of a harmony with manual additions. */
export const MOST_BY_HAND = 12;

/** Sorts colours by share with accents last, and renumbers the label map to match. */
export function sortedByShare(
  harmony: EditedHarmony,
  colours: EditedColour[],
  data: Uint8Array,
): EditedHarmony {
  const order = colours.map((_, i) => i);
  order.sort(
    (p, q) =>
      Number(colours[p]!.accent) - Number(colours[q]!.accent) ||
      colours[q]!.share - colours[p]!.share ||
      p - q,
  );
  const place = new Uint8Array(256).fill(UNLABELLED);
  order.forEach((old, now) => {
    place[old] = now;
  });
  return {
    ...harmony,
    colours: order.map((i) => colours[i]!),
    labels: { ...harmony.labels, data: data.map((v) => place[v]!) },
  };
}

/** The name itself if no other colour has it, else the name with a number. */
export function freeName(name: string, others: readonly EditedColour[]): string {
  const taken = new Set(others.map((c) => c.name));
  if (!taken.has(name)) return name;
  for (let n = 2; ; n++) if (!taken.has(`${name} ${n}`)) return `${name} ${n}`;
}

/** Gives a colour the painter's own name. */
export function withColourName(
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
    colours: harmony.colours.with(index, { ...harmony.colours[index], name: own, named: true }),
  });
}

/** Removes a colour; the shares of the others grow in proportion. */
export function removeColour(
  harmony: EditedHarmony,
  index: number,
): Result<EditedHarmony, EditFault> {
  const gone = harmony.colours[index];
  if (!gone) return fail({ code: 'no-such-colour' });
  if (harmony.colours.length === 1) return fail({ code: 'last-colour' });
  const rest = 1 - gone.share;
  const colours = harmony.colours
    .filter((_, i) => i !== index)
    .map((c) => ({ ...c, share: rest > 0 ? c.share / rest : 1 / (harmony.colours.length - 1) }));
  const data = harmony.labels.data.map((v) =>
    v === UNLABELLED || v === index ? UNLABELLED : v > index ? v - 1 : v,
  );
  return ok(sortedByShare(harmony, colours, data));
}

/**
 * Corrects a colour by eye. The gathered colour is kept; the ladder moves with the correction.
 * @param lab the corrected colour, CIELAB under D65
 * @param words description of the change
 */
export function correctColourByEye(
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

/** Sets or clears the mark for sheen that shifts with the viewing angle. */
export function markSheen(
  harmony: EditedHarmony,
  index: number,
  sheen: boolean,
): Result<EditedHarmony, EditFault> {
  const old = harmony.colours[index];
  if (!old) return fail({ code: 'no-such-colour' });
  return ok({ ...harmony, colours: harmony.colours.with(index, { ...old, sheen }) });
}

/**
 * Index of the colour at a place of the photograph (fractions 0…1 of width and height); null if
 * none.
 */
export function colourAt({ labels }: EditedHarmony, x: number, y: number): number | null {
  if (!(x >= 0 && x < 1 && y >= 0 && y < 1)) return null;
  const at = Math.floor(y * labels.height) * labels.width + Math.floor(x * labels.width);
  const v = labels.data[at]!;
  return v === UNLABELLED ? null : v;
}
