import { signal } from '@preact/signals';
import { canonical } from '../../../book/schema/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import type { Fewest } from '../../../harmony/fewest-pigments.ts';
import type { VariantAmount } from '../../../harmony/variant-target.ts';
import { mixFaultWords } from '../../../messages/mixture-messages.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { job } from '../job.ts';
import { shelfLabelOf } from '../shelf-labels.ts';
import { shelf, showError } from '../studio.ts';
import { runMixtureJob } from '../worker-jobs.ts';
import { mixingPreferences, paletteOptions } from './mixing-decisions.ts';

/** Permitted difference of each colour, CIEDE2000. */
export const paletteTolerance = signal(2);
/** Variants that the palette must also mix, up to this amount; null for the colours alone. */
export const paletteVariantAmount = signal<VariantAmount | null>(null);
export const limitedPaletteJob = job();

const latestPalettes = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly within: number;
  readonly result: Fewest;
} | null>(null);

/** Key of a search: colours, tolerance, variants and preferences, without a chosen palette. */
const searchKey = (colours: readonly Lab[]) =>
  canonical([
    colours,
    paletteTolerance.value,
    paletteVariantAmount.value,
    { ...mixingPreferences.value, only: null, keep: 'nearest', coarse: false },
  ]);

/** Latest result; null if there is none. `isOf`: harmony, shelf and settings are still the same. */
export function latestPalettesFor(colours: readonly Lab[]) {
  const last = latestPalettes.value;
  if (!last) return null;
  return { ...last, isOf: last.on === shelf.value && last.of === searchKey(colours) };
}

/** Searches for the smallest palette of these colours (CIELAB, D65). */
export async function findFewest(colours: readonly Lab[]): Promise<void> {
  const [on, of, limit] = [shelf.value, searchKey(colours), paletteTolerance.value];
  const { most = 4, constraints = {} } = paletteOptions.value;
  const amount = paletteVariantAmount.value;
  const how = { within: limit, most, constraints, ...(amount ? { variants: amount } : {}) };
  const result = await limitedPaletteJob.run((options) =>
    runMixtureJob('fewest', { colours, shelf: on, options: how }, options),
  );
  if (result === null) return;
  if (!result.ok)
    return showError(mixFaultWords(result.fault, (pigment) => shelfLabelOf(pigment, on)));
  latestPalettes.value = { of, on, within: limit, result: result.value };
}
