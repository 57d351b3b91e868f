import type { Lab } from '../colour/lab.ts';
import type { Declared } from '../harmony/period-family.ts';
import type { PileSearchOptions } from '../harmony/pile-search.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { ok, type Result } from '../result.ts';
import {
  DRAPERY_WAYS,
  type DraperyFault,
  type DraperyWay,
  type GarmentRequest,
} from './cloth-types.ts';
import table from './data/formulas.json' with { type: 'json' };
import { FABRICS, type Fabric } from './fabric.ts';
import { type Formula, type FormulaHead, formulaOf } from './formula.ts';
import { drape } from './garment.ts';

/** A formula that ships with Kingcup: a specification; its piles are computed from a shelf. */
interface ShippedFormula extends FormulaHead {
  readonly wish: GarmentRequest;
}

const labOf = (given: readonly number[]): Lab => {
  if (given.length !== 3) throw new RangeError(`a colour of ${given.length} numbers`);
  return [given[0]!, given[1]!, given[2]!];
};

/** Checks a word against a list. @throws RangeError for any other */
function wordOf<T extends string>(words: readonly T[], given: string): T {
  const found = words.find((word) => word === given);
  if (found === undefined) throw new RangeError(`no ${given}`);
  return found;
}

interface Row {
  readonly lab: readonly number[];
  readonly way: string;
  readonly stuff: string;
  readonly declared?: string;
  readonly neighbour?: readonly number[];
  readonly shadows?: readonly number[];
  readonly pigments?: readonly string[];
  readonly glaze?: string;
}

function wishOf(name: string, row: Row): GarmentRequest {
  const declared: readonly Declared[] = ['white', 'black'];
  return {
    name,
    lab: labOf(row.lab),
    way: wordOf<DraperyWay>(DRAPERY_WAYS, row.way),
    stuff: wordOf<Fabric>(FABRICS, row.stuff),
    ...(row.declared ? { declared: wordOf(declared, row.declared) } : {}),
    ...(row.neighbour ? { neighbour: labOf(row.neighbour) } : {}),
    ...(row.shadows ? { shadows: labOf(row.shadows) } : {}),
    ...(row.pigments ? { pigments: row.pigments } : {}),
    ...(row.glaze ? { glaze: row.glaze } : {}),
  };
}

/**
 * The six formulas that ship with Kingcup.
 * @throws RangeError at load if the data file is malformed
 */
export const SHIPPED_FORMULAS: readonly ShippedFormula[] = table.formulas.map(
  ({ name, subject, note, wish }) => ({
    name,
    subject,
    note,
    wish: wishOf(name, wish),
  }),
);

/**
 * Computes one of them from a shelf. The starter shelf always gives a formula; another shelf may
 * give a fault.
 */
export function workedFormula(
  { wish, name, subject, note }: ShippedFormula,
  shelf: Shelf,
  options: PileSearchOptions = {},
): Result<Formula, DraperyFault> {
  const garment = drape(wish, shelf, options);
  return garment.ok ? ok(formulaOf(garment.value, { name, subject, note }, shelf)) : garment;
}
