import { signal } from '@preact/signals';
import type { Bench } from '../../../mixture/bench.ts';
import { type Measure, measures, mixingOrder } from '../../../mixture/measure.ts';
import { baseOf } from '../../../pigment/mixable.ts';
import { pasteOf } from '../../../pigment/paste.ts';
import { grindOfPigment } from '../../../pigment/weigh.ts';
import { stocked } from '../../studio.ts';

/** How the studio measures amounts: spoonfuls, lengths of ribbon from the tube, or weight. */
export type By = 'spoon' | 'ribbon' | 'scale';
export const WAYS_TO_MEASURE: readonly By[] = ['spoon', 'ribbon', 'scale'];

/** Current way to measure, for this session. */
export const by = signal<By>('spoon');
/** Total amount of the pile, ml, for this session. */
export const millilitres = signal(20);

/** Density of a paste, g/cm³, from the studio's own lot if it is recorded; null if unknown. */
function densityOf(pigment: string): number | null {
  const stock = stocked.value?.body.stock;
  const [id, lot] = [baseOf(pigment), pigment.split('#')[1]];
  const entry = stock?.entries.find((one) => (lot ? one.id === lot : one.pigment === id));
  const own = stock?.own.find((one) => one.id === id);
  const grind = grindOfPigment(id, {
    density: entry?.density ?? own?.density ?? undefined,
    oil: entry?.oil ?? own?.oil ?? undefined,
  });
  return grind.ok ? pasteOf(grind.value).density : null;
}

/**
 * Parts, volume and weight of each paint, in the order of mixing.
 * @param cm3 total volume
 */
export function measured(bench: Bench, cm3: number): Measure[] {
  const ofPile = (name: string): number | null => {
    const made = bench.letDowns.find((one) => one.name === name);
    if (!made) return densityOf(name);
    const [pigment, white] = [densityOf(made.pigment), densityOf(made.white)];
    if (pigment === null || white === null) return null;
    return (pigment + made.whiteParts * white) / (1 + made.whiteParts);
  };
  return measures(mixingOrder(bench.parts, bench.shelf), bench.shelf, cm3, ofPile);
}
