import { deltaE00 } from '../../../colour/difference.ts';
import type { Lab } from '../../../colour/lab.ts';
import {
  correct,
  type EditedColour,
  type EditedHarmony,
  markSheen,
  rename,
} from '../../../harmony/edit.ts';
import type { Gathered } from '../../../harmony/harmony.ts';

/** As far as one thing's colour may move when a little more or less of it is looked at (CIEDE2000). */
const NEAR = 6;

/** Names that the painter gave: gathering never gives two colours these. */
export const named = new Set<string>();

const isByHand = ({ name, altered, sheen, spotSide }: EditedColour): boolean =>
  altered !== undefined || sheen === true || spotSide !== undefined || named.has(name);

/**
 * What the painter said of colours, put upon the same colours gathered anew: names, corrections by
 * eye and sheen. In another light nothing is carried, because nothing can be known to be the same.
 * @returns lost: whether something of it found no colour
 */
export function carried(
  old: EditedHarmony,
  now: Gathered,
  isSameLight: boolean,
): { readonly harmony: EditedHarmony; readonly lost: boolean } {
  let harmony: EditedHarmony = now;
  let lost = false;
  const taken = new Set<number>();
  for (const colour of old.colours.filter(isByHand)) {
    const was = colour.asGathered ?? colour.lab;
    const index = isSameLight && colour.spotSide === undefined ? nearest(now, was, taken) : -1;
    if (index < 0) {
      lost = true;
      continue;
    }
    taken.add(index);
    if (named.has(colour.name)) harmony = orElse(rename(harmony, index, colour.name), harmony);
    if (colour.sheen) harmony = orElse(markSheen(harmony, index, true), harmony);
    if (colour.altered !== undefined) {
      const seen = now.colours[index]!.lab;
      const lab = seen.map((v, i) => v + colour.lab[i]! - was[i]!) as [number, number, number];
      harmony = orElse(correct(harmony, index, lab, colour.altered), harmony);
    }
  }
  return { harmony, lost };
}

const orElse = <T>(result: { ok: true; value: T } | { ok: false }, other: T): T =>
  result.ok ? result.value : other;

function nearest({ colours }: Gathered, lab: Lab, taken: ReadonlySet<number>): number {
  let best = -1;
  let least = NEAR;
  colours.forEach((colour, i) => {
    const away = deltaE00(lab, colour.lab);
    if (away < least && !taken.has(i)) {
      least = away;
      best = i;
    }
  });
  return best;
}
