import { signal } from '@preact/signals';
import type { Bench } from '../../../mixture/bench.ts';
import { type Measure, measures, mixingOrder } from '../../../mixture/measure.ts';
import { baseOf } from '../../../pigment/mixable.ts';
import { pasteOf } from '../../../pigment/paste.ts';
import { grindOfPigment } from '../../../pigment/weigh.ts';
import { stocked } from '../../studio.ts';

export type By = 'spoon' | 'ribbon' | 'scale';
export const WAYS_TO_MEASURE: readonly By[] = ['spoon', 'ribbon', 'scale'];

/** How this bench measures, and how much it wants; for this sitting. */
export const by = signal<By>('spoon');
export const millilitres = signal(20);

/** g/cm³ of a paste: by the figures of the studio's own lot first; null where nobody knows it. */
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

/** The piles in the order in which they are mixed, each by volume and weight. */
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
