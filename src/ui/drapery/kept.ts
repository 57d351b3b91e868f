import type { HarmonyBody } from '../../book/harmony.ts';
import type { Lab } from '../../colour/lab.ts';
import { moved } from '../harmony/drawn.ts';
import type { Offered } from './state.ts';

/** A list of colours to choose from. */
export interface Source {
  readonly name: string;
  /** The kept harmony that it is, where it is one. */
  readonly harmony: string | null;
  readonly colours: readonly Offered[];
}

export const ladderOf = (labs: readonly Lab[]) => (labs.length === 6 ? { ladder: labs } : {});

/** A kept harmony: every colour as it was to be mixed, with its ladder moved along. */
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
