import { gramsWords, oilWords } from '../messages/amounts.ts';
import { weighFaultWords } from '../messages/stock-faults.ts';
import type { NumberFormat } from '../number-format.ts';
import type { Day, PalettePlan, PigmentPlan } from '../palette/day-plan.ts';
import type { Studio } from '../palette/passage.ts';
import { cm3Up } from '../palette/rounded-amounts.ts';
import type { Draw } from '../palette/stock-supply.ts';
import { isTempered, TOOLS, TOOLS_WORDS } from '../palette/tool-groups.ts';

/** One line of the list of preparations: a pigment from one stock entry. */
export interface PrepareRow {
  /** Running number, the order of work. */
  readonly number: number;
  readonly pigment: string;
  readonly label: string;
  /** "lot 7", or what to know instead. */
  readonly lot: string;
  /** "set out", "grind", "temper, do not grind". */
  readonly act: string;
  /** cm3 of paste, rounded up; null if a part is not a volume. */
  readonly cm3: number | null;
  /** Amount to weigh: "12.4 g", "by volume", "by parts", "not weighed". */
  readonly weigh: string;
  /** Oil to begin with, for powder: "4 g". */
  readonly oil: string | null;
}
/** Preparations that share a set of tools. */
export interface PrepareGroup {
  readonly tools: string;
  readonly rows: readonly PrepareRow[];
}

/** The list of preparations for a palette, in order of work, and remarks under it. */
export function preparing(
  day: Day,
  palette: PalettePlan,
  studio: Studio,
  number: NumberFormat,
): { readonly prepare: readonly PrepareGroup[]; readonly prepareNotes: readonly string[] } {
  let place = 0;
  const prepare = TOOLS.map((tools) => ({
    tools: TOOLS_WORDS[tools],
    rows: palette.preparing
      .filter((one) => one.tools === tools)
      .flatMap((plan) => {
        place++;
        return plan.supply.draws.map((draw) => rowOf(place, plan, draw, day, studio, number));
      }),
  })).filter(({ rows }) => rows.length > 0);
  const draws = palette.pigments.flatMap(({ supply }) => supply.draws);
  const notes: string[] = [];
  if (!day.weighable)
    notes.push('The shelf does not say that its parts are volumes: parts are given, but no grams.');
  if (draws.some(({ weighed }) => weighed.as === 'powder'))
    notes.push('Oil: begin with about three quarters, then by drops until it comes together.');
  if (draws.some(({ entry }) => entry?.form !== 'powder'))
    notes.push('Paste and tubes: as they come, no oil added.');
  if (draws.some(({ weighed }) => 'about' in weighed && weighed.about))
    notes.push('“About”: an estimate; weigh what your lot takes.');
  return { prepare, prepareNotes: [...notes, ...unweighedWords(palette)] };
}

function rowOf(
  place: number,
  plan: PigmentPlan,
  { entry, cm3, weighed }: Draw,
  day: Day,
  studio: Studio,
  number: NumberFormat,
): PrepareRow {
  const powder = entry?.form === 'powder';
  const act = powder ? (isTempered(plan.key) ? 'temper, do not grind' : 'grind') : 'set out';
  return {
    number: place,
    pigment: plan.key,
    label: plan.label,
    lot: lotWords(plan, entry, studio),
    act,
    cm3: day.weighable ? cm3Up(cm3) : null,
    weigh: day.weighable ? weighWords(weighed, number) : 'by parts',
    oil: day.weighable && weighed.as === 'powder' ? oilWords(weighed.oilGrams, number) : null,
  };
}

function lotWords({ supply }: PigmentPlan, entry: Draw['entry'], { stock }: Studio): string {
  if (entry === null) {
    if (stock === null) return '';
    return supply.dryRefused ? 'wetted paste only, to be bought' : 'not on the shelf';
  }
  const lot = entry.lot === '' ? '' : /^lot\b/i.test(entry.lot) ? entry.lot : `lot ${entry.lot}`;
  return [entry.grade, lot].filter((word) => word !== '').join(', ');
}

function weighWords(weighed: Draw['weighed'], number: NumberFormat): string {
  switch (weighed.as) {
    case 'paste':
      return weighed.grams === null
        ? 'by volume'
        : gramsWords(weighed.grams, weighed.about, number);
    case 'powder':
      return gramsWords(weighed.pigmentGrams, weighed.about, number);
    case 'unweighed':
      return 'not weighed';
  }
}

/** Why pigments of the palette cannot be weighed, each with what to do. */
const unweighedWords = ({ pigments }: PalettePlan): readonly string[] =>
  pigments.flatMap(({ supply }) =>
    supply.draws.flatMap(({ weighed }) =>
      weighed.as === 'unweighed' ? [weighFaultWords(weighed.why)] : [],
    ),
  );
