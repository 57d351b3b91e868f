import type { MixFault } from '../src/mixture/search-options.ts';
import type { Day } from '../src/palette/day-plan.ts';
import type { DayRequest } from '../src/palette/day-request.ts';
import { type FewestOfDay, fewestOfDay } from '../src/palette/fewest-of-day.ts';
import type { PaletteFault } from '../src/palette/palette-faults.ts';
import type { Studio } from '../src/palette/passage.ts';
import type { Result } from '../src/result.ts';
import { planDay } from '../src/sheet/plan-day.ts';
import type { JobResult } from './job-protocol.ts';

/** Plans a day's palettes. */
export interface PaletteJob {
  readonly studio: Studio;
  readonly asked: DayRequest;
  /** Also search for the fewest pigments, which is slow. */
  readonly fewest: boolean;
}
export interface PaletteAnswer {
  readonly day: Result<Day, readonly PaletteFault[]>;
  readonly fewest: Result<FewestOfDay, MixFault> | null;
}

/** Plans a day; the progress 0…1 is that of the search for the fewest pigments. */
export function runPaletteJob(
  { studio, asked, fewest }: PaletteJob,
  tell: (done: number) => void,
): JobResult<PaletteAnswer> {
  const day = planDay(asked, studio);
  const found = fewest && day.ok ? fewestOfDay(day.value, studio, { onProgress: tell }) : null;
  return { value: { day, fewest: found } };
}
