import type { HarmonyBody } from '../../../book/schema/harmony.ts';
import type { Lab } from '../../../colour/lab.ts';
import { shiftLadder } from '../display-ladder.ts';
import type { ColourOption } from './drapery-scheme.ts';

/** A list of colours to choose from. */
export interface ColourSource {
  readonly name: string;
  /** Id of the saved harmony behind it; null for other sources. */
  readonly harmony: string | null;
  readonly colours: readonly ColourOption[];
}

/** The `ladder` field for six steps; no field for any other number. */
export const sixStepLadder = (labs: readonly Lab[]) => (labs.length === 6 ? { ladder: labs } : {});

/** A saved harmony as a source: target colours, with each ladder shifted along with its colour. */
export const sourceFromHarmony = (id: string, { name, colours }: HarmonyBody): ColourSource => ({
  name,
  harmony: id,
  colours: colours.map(({ name, lab, share, accent, ladder, answer }) => {
    const target = answer?.target ?? lab;
    return {
      name,
      share,
      accent,
      lab: target,
      ...sixStepLadder(shiftLadder(ladder, lab, target).map((step) => step.lab)),
    };
  }),
});
