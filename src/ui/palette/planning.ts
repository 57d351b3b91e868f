import { batch, computed, effect, signal } from '@preact/signals';
import { runJob } from '../../../workers/jobs.ts';
import type { PaletteAnswer, PaletteJob } from '../../../workers/palette.ts';
import type { DayAsked } from '../../palette/asked.ts';
import type { PaletteFault } from '../../palette/faults.ts';
import type { FewestOfDay } from '../../palette/fewer.ts';
import type { Studio } from '../../palette/passage.ts';
import type { Day } from '../../palette/plan.ts';
import { putBack } from '../../palette/supply.ts';
import { starterStock } from '../../pigment/starter.ts';
import { place } from '../route.ts';
import { mixedFrom } from '../shelf/stocked.ts';
import { job, type TaskOptions } from '../state/job.ts';
import { complain, shelf, stocked } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { date, kept, leftovers, palettes, passage, sheet } from './days.ts';
import { leftoverOf, passageOf } from './kept.ts';
import { rules } from './rules.ts';

const STARTER = starterStock();

/**
 * Shelf and stock that the day is planned from. On a prepared day, what it took counts as still in
 * stock.
 */
export const studio = computed((): Studio => {
  const own = stocked.value?.body.stock;
  const stock =
    own === undefined
      ? STARTER
      : own.entries.length > 0
        ? own
        : { ...STARTER, surface: own.surface };
  const taken = sheet.value?.body.taken;
  if (!taken) return { shelf: shelf.value, stock };
  const before = putBack(stock, taken);
  return { shelf: own ? mixedFrom(before) : shelf.value, stock: before };
});
export const isCounted = computed(() => (stocked.value?.body.stock?.entries.length ?? 0) > 0);

const asked = computed((): DayAsked | null =>
  kept.value === null
    ? null
    : {
        date: date.value,
        palettes: palettes.value.map(({ body }) => ({
          name: body.name,
          passages: body.passages.flatMap((id) => {
            const found = passage(id);
            return found ? [passageOf(found)] : [];
          }),
          ...(body.order ? { order: body.order } : {}),
          ...(body.seats.length > 0 ? { seats: body.seats } : {}),
        })),
        rules: rules.value,
        leftovers: leftovers.value.map(leftoverOf),
      },
);

/** The planned day and the studio it was planned for; null while there is nothing to plan. */
export const plan = signal<{ readonly day: Day; readonly studio: Studio } | null>(null);
export const faults = signal<readonly PaletteFault[]>([]);
const planning = job({ onError: () => complain(sayPalette.notPlanned) });
export const isPlanning = computed(() => planning.progress.value !== null);
const seekingFewest = job({ onError: () => complain(sayPalette.noFewest) });
export const fewest = signal<FewestOfDay | null>(null);
/** Progress of the search for the fewest pigments, 0…1; null while none runs. */
export const seeking = seekingFewest.progress;

const plansOf = (asked: PaletteJob, options: TaskOptions) =>
  runJob<PaletteJob, PaletteAnswer, number>(
    () =>
      new Worker(new URL('../../../workers/palette.worker.ts', import.meta.url), {
        type: 'module',
      }),
    asked,
    options,
  );

effect(() => {
  const wanted = asked.value;
  const from = studio.value;
  if (wanted === null || place.value !== 'palette') return;
  fewest.value = null;
  seekingFewest.cancel();
  if (wanted.palettes.every(({ passages }) => passages.every(({ piles }) => piles.length === 0))) {
    batch(() => {
      plan.value = null;
      faults.value = [];
    });
    return;
  }
  void planning
    .run((task) => plansOf({ studio: from, asked: wanted, fewest: false }, task))
    .then((answer) => {
      if (!answer) return;
      const { day } = answer;
      batch(() => {
        plan.value = day.ok ? { day: day.value, studio: from } : null;
        faults.value = day.ok ? [] : day.fault;
      });
    });
  return planning.cancel;
});

/** Searches for the fewest pigments of the day, in a worker; the result goes to `fewest`. */
export async function seekFewest(): Promise<void> {
  const wanted = asked.value;
  if (wanted === null) return;
  const answer = await seekingFewest.run((task) =>
    plansOf({ studio: studio.value, asked: wanted, fewest: true }, task),
  );
  if (!answer) return;
  if (answer.fewest?.ok && wanted === asked.value) fewest.value = answer.fewest.value;
  else complain(sayPalette.noFewest);
}
export const stopSeeking = seekingFewest.stop;
