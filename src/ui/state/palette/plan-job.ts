import { batch, computed, effect, signal } from '@preact/signals';
import { runJob } from '../../../../workers/job-protocol.ts';
import type { PaletteAnswer, PaletteJob } from '../../../../workers/palette.ts';
import type { Day } from '../../../palette/day-plan.ts';
import type { DayRequest } from '../../../palette/day-request.ts';
import type { FewestOfDay } from '../../../palette/fewest-of-day.ts';
import type { PaletteFault } from '../../../palette/palette-faults.ts';
import type { Studio } from '../../../palette/passage.ts';
import { putBack } from '../../../palette/stock-supply.ts';
import { starterStock } from '../../../pigment/starter-shelf.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { job, type TaskOptions } from '../job.ts';
import { place } from '../route.ts';
import { shelf, showError, storedShelf } from '../studio.ts';
import { mixingShelfOf } from '../studio-shelf.ts';
import {
  dayEntries,
  dayPalettes,
  daySheet,
  offeredLeftovers,
  passageById,
  plannedDate,
} from './day-entries.ts';
import { leftoverFromEntry, passageFromEntry } from './palette-records.ts';
import { studioRules } from './studio-rules.ts';

const STARTER = starterStock();

/**
 * Shelf and stock that the day is planned from. On a prepared day, what it took counts as still in
 * stock.
 */
export const planningStudio = computed((): Studio => {
  const own = storedShelf.value?.body.stock;
  const stock =
    own === undefined
      ? STARTER
      : own.entries.length > 0
        ? own
        : { ...STARTER, surface: own.surface };
  const taken = daySheet.value?.body.taken;
  if (!taken) return { shelf: shelf.value, stock };
  const before = putBack(stock, taken);
  return { shelf: own ? mixingShelfOf(before) : shelf.value, stock: before };
});
export const isStockCounted = computed(
  () => (storedShelf.value?.body.stock?.entries.length ?? 0) > 0,
);

const dayRequest = computed((): DayRequest | null =>
  dayEntries.value === null
    ? null
    : {
        date: plannedDate.value,
        palettes: dayPalettes.value.map(({ body }) => ({
          name: body.name,
          passages: body.passages.flatMap((id) => {
            const found = passageById(id);
            return found ? [passageFromEntry(found)] : [];
          }),
          ...(body.order ? { order: body.order } : {}),
          ...(body.seats.length > 0 ? { seats: body.seats } : {}),
        })),
        rules: studioRules.value,
        leftovers: offeredLeftovers.value.map(leftoverFromEntry),
      },
);

/** The planned day and the studio it was planned for; null while there is nothing to plan. */
export const dayPlan = signal<{ readonly day: Day; readonly studio: Studio } | null>(null);
export const planFaults = signal<readonly PaletteFault[]>([]);
const planning = job({ onError: () => showError(paletteTexts.notPlanned) });
export const isPlanning = computed(() => planning.progress.value !== null);
const seekingFewest = job({ onError: () => showError(paletteTexts.noFewest) });
export const fewestPigments = signal<FewestOfDay | null>(null);
/** Progress of the search for the fewest pigments, 0…1; null while none runs. */
export const fewestProgress = seekingFewest.progress;

const runPlanJob = (asked: PaletteJob, options: TaskOptions) =>
  runJob<PaletteJob, PaletteAnswer, number>(
    () =>
      new Worker(new URL('../../../../workers/palette.worker.ts', import.meta.url), {
        type: 'module',
      }),
    asked,
    options,
  );

effect(() => {
  const wanted = dayRequest.value;
  const from = planningStudio.value;
  if (wanted === null || place.value !== 'palette') return;
  fewestPigments.value = null;
  seekingFewest.cancel();
  if (wanted.palettes.every(({ passages }) => passages.every(({ piles }) => piles.length === 0))) {
    batch(() => {
      dayPlan.value = null;
      planFaults.value = [];
    });
    return;
  }
  void planning
    .run((task) => runPlanJob({ studio: from, asked: wanted, fewest: false }, task))
    .then((answer) => {
      if (!answer) return;
      const { day } = answer;
      batch(() => {
        dayPlan.value = day.ok ? { day: day.value, studio: from } : null;
        planFaults.value = day.ok ? [] : day.fault;
      });
    });
  return planning.cancel;
});

/** Searches for the fewest pigments of the day, in a worker; the result goes to `fewest`. */
export async function searchFewestPigments(): Promise<void> {
  const wanted = dayRequest.value;
  if (wanted === null) return;
  const answer = await seekingFewest.run((task) =>
    runPlanJob({ studio: planningStudio.value, asked: wanted, fewest: true }, task),
  );
  if (!answer) return;
  if (answer.fewest?.ok && wanted === dayRequest.value) fewestPigments.value = answer.fewest.value;
  else showError(paletteTexts.noFewest);
}
export const stopFewestSearch = seekingFewest.stop;
