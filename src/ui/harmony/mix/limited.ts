import { signal } from '@preact/signals';
import { canonical } from '../../../book/digest.ts';
import type { Lab } from '../../../colour/lab.ts';
import type { Fewest } from '../../../harmony/fewest.ts';
import type { Amount } from '../../../harmony/vary.ts';
import { mixFaultWords } from '../../../mixture/faults.ts';
import type { Shelf } from '../../../pigment/shelf.ts';
import { workMixtures } from '../../jobs.ts';
import { job } from '../../state/job.ts';
import { complain, shelf } from '../../studio.ts';
import { paletteOptions, wish } from './decided.ts';
import { labelOn } from './named.ts';

/** Permitted difference of each colour, CIEDE2000. */
export const within = signal(2);
/** Variants that the palette must also mix, up to this amount; null for the colours alone. */
export const variants = signal<Amount | null>(null);
export const limiting = job();

const found = signal<{
  readonly of: string;
  readonly on: Shelf;
  readonly within: number;
  readonly result: Fewest;
} | null>(null);

/** Key of a search: colours, tolerance, variants and preferences, without a chosen palette. */
const asked = (colours: readonly Lab[]) =>
  canonical([
    colours,
    within.value,
    variants.value,
    { ...wish.value, only: null, keep: 'nearest', coarse: false },
  ]);

/** Latest result; null if there is none. `isOf`: harmony, shelf and settings are still the same. */
export function palettesOf(colours: readonly Lab[]) {
  const last = found.value;
  if (!last) return null;
  return { ...last, isOf: last.on === shelf.value && last.of === asked(colours) };
}

/** Searches for the smallest palette of these colours (CIELAB, D65). */
export async function findFewest(colours: readonly Lab[]): Promise<void> {
  const [on, of, limit] = [shelf.value, asked(colours), within.value];
  const { most = 4, constraints = {} } = paletteOptions.value;
  const amount = variants.value;
  const how = { within: limit, most, constraints, ...(amount ? { variants: amount } : {}) };
  const result = await limiting.run((options) =>
    workMixtures('fewest', { colours, shelf: on, options: how }, options),
  );
  if (result === null) return;
  if (!result.ok) return complain(mixFaultWords(result.fault, (pigment) => labelOn(pigment, on)));
  found.value = { of, on, within: limit, result: result.value };
}
