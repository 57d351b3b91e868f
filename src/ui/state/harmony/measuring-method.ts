import { signal } from '@preact/signals';
import type { MeasuredRecipe } from '../../../mixture/measured-recipe.ts';
import { type Measure, mixingOrder, pileMeasures } from '../../../mixture/pile-measures.ts';
import { pigmentOfPaint } from '../../../pigment/mixing-shelf.ts';
import { pasteOf } from '../../../pigment/paste.ts';
import { pigmentGrind } from '../../../pigment/pigment-grind.ts';
import { storedShelf } from '../studio.ts';

/** How the studio measures amounts: spoonfuls, lengths of ribbon from the tube, or weight. */
type MeasuringMethod = 'spoon' | 'ribbon' | 'scale';
export const MEASURING_METHODS: readonly MeasuringMethod[] = ['spoon', 'ribbon', 'scale'];

/** Current way to measure, for this session. */
export const measuringMethod = signal<MeasuringMethod>('spoon');
/** Total amount of the pile, ml, for this session. */
export const pileMillilitres = signal(20);

/** Density of a paste, g/cm³, from the studio's own lot if it is recorded; null if unknown. */
function densityOf(pigment: string): number | null {
  const stock = storedShelf.value?.body.stock;
  const [id, lot] = [pigmentOfPaint(pigment), pigment.split('#')[1]];
  const entry = stock?.entries.find((one) => (lot ? one.id === lot : one.pigment === id));
  const own = stock?.own.find((one) => one.id === id);
  const grind = pigmentGrind(id, {
    density: entry?.density ?? own?.density ?? undefined,
    oil: entry?.oil ?? own?.oil ?? undefined,
  });
  return grind.ok ? pasteOf(grind.value).density : null;
}

/**
 * Parts, volume and weight of each paint, in the order of mixing.
 * @param cm3 total volume
 */
export function recipeAmounts(bench: MeasuredRecipe, cm3: number): Measure[] {
  const ofPile = (name: string): number | null => {
    const made = bench.letDowns.find((one) => one.name === name);
    if (!made) return densityOf(name);
    const [pigment, white] = [densityOf(made.pigment), densityOf(made.white)];
    if (pigment === null || white === null) return null;
    return (pigment + made.whiteParts * white) / (1 + made.whiteParts);
  };
  return pileMeasures(mixingOrder(bench.parts, bench.shelf), bench.shelf, cm3, ofPile);
}
