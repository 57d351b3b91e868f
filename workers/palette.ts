import type { MixFault } from '../src/mixture/work.ts';
import type { DayAsked } from '../src/palette/asked.ts';
import { planDay } from '../src/palette/day.ts';
import type { PaletteFault } from '../src/palette/faults.ts';
import { type FewestOfDay, fewestOfDay } from '../src/palette/fewer.ts';
import type { Studio } from '../src/palette/passage.ts';
import type { Day } from '../src/palette/plan.ts';
import type { Result } from '../src/result.ts';
import type { Handed } from './jobs.ts';

/** Plans a day's palettes. */
export interface PaletteJob {
  readonly studio: Studio;
  readonly asked: DayAsked;
  /** Also search for the fewest pigments, which is slow. */
  readonly fewest: boolean;
}
export interface PaletteAnswer {
  readonly day: Result<Day, readonly PaletteFault[]>;
  readonly fewest: Result<FewestOfDay, MixFault> | null;
}

/** Plans a day; the progress 0…1 is that of the search for the fewest pigments. */
export function planned(
  { studio, asked, fewest }: PaletteJob,
  tell: (done: number) => void,
): Handed<PaletteAnswer> {
  const day = planDay(asked, studio);
  const found = fewest && day.ok ? fewestOfDay(day.value, studio, { onProgress: tell }) : null;
  return { value: { day, fewest: found } };
}
