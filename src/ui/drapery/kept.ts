import type { HarmonyBody } from '../../book/harmony.ts';
import type { Lab } from '../../colour/lab.ts';
import { moved } from '../harmony/drawn.ts';
import type { Offered } from './state.ts';

/** A list of colours to choose from. */
export interface Source {
  readonly name: string;
  /** Id of the saved harmony behind it; null for other sources. */
  readonly harmony: string | null;
  readonly colours: readonly Offered[];
}

/** The `ladder` field for six steps; no field for any other number. */
export const ladderOf = (labs: readonly Lab[]) => (labs.length === 6 ? { ladder: labs } : {});

/** A saved harmony as a source: target colours, with each ladder shifted along with its colour. */
export const keptHarmony = (id: string, { name, colours }: HarmonyBody): Source => ({
  name,
  harmony: id,
  colours: colours.map(({ name, lab, share, accent, ladder, answer }) => {
    const target = answer?.target ?? lab;
    return {
      name,
      share,
      accent,
      lab: target,
      ...ladderOf(moved(ladder, lab, target).map((step) => step.lab)),
    };
  }),
});
