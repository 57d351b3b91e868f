import { hexOf } from '../colour/gamut-mapping.ts';
import { letterOf } from '../drawing/palette-svg.ts';
import type { NumberFormat } from '../number-format.ts';
import type { Day, PalettePlan, PilePlan } from '../palette/day-plan.ts';
import { labelIn, type Studio } from '../palette/passage.ts';
import { filmUmOf } from '../palette/pile-quantity.ts';
import { cm3Up } from '../palette/rounded-amounts.ts';
import { mixingStepOrder, mixingSteps } from './mixing-steps.ts';

/** One pile on the sheet. */
export interface SheetPile {
  readonly key: string;
  readonly name: string;
  /** Letter of a mixed pile, which replaces its name in the drawing; empty otherwise. */
  readonly mark: string;
  /** null if the palette serves only one passage. */
  readonly passage: string | null;
  /** sRGB colour for print: a guide, not for matching. */
  readonly hex: string;
  readonly mixed: boolean;
  readonly cm3: number;
  /** "body colour, 40 µm, 2 coats". */
  readonly laid: string;
  readonly parts: readonly {
    readonly label: string;
    readonly parts: number;
    readonly letDown: boolean;
    readonly cm3: number | null;
  }[];
  /** Instructions for let-downs and oil; `parts` are in mixing order. */
  readonly steps: readonly string[];
  /** Lots in the order of the parts, – for one without; empty if no lot is known. */
  readonly lots: string;
  readonly instead: string | null;
}

/** Describes a planned pile for the sheet. */
export function sheetPile(
  plan: PilePlan,
  day: Day,
  palette: PalettePlan,
  studio: Studio,
  number: NumberFormat,
): SheetPile {
  const { pile, amount, swap, passage, pure } = plan;
  const coats = pile.coats ?? 1;
  const total = pile.parts.reduce((sum, one) => sum + one.parts, 0);
  const parts = mixingStepOrder(plan);
  const lots = [...new Set(parts.map(({ pigment }) => pigment))].map((pigment) => {
    const draws = palette.pigments.find(({ key }) => key === pigment)?.supply.draws ?? [];
    return [...new Set(draws.map(({ entry }) => entry?.lot ?? '').filter((lot) => lot !== ''))];
  });
  return {
    key: plan.key,
    name: pile.name,
    mark: pure ? '' : letterOf(palette.mixed.indexOf(plan)),
    passage: palette.passages.length > 1 ? passage.name : null,
    hex: hexOf(plan.lab),
    mixed: !pure,
    cm3: cm3Up(amount.prepare),
    laid: `${pile.film}, ${number(filmUmOf(pile), 0, 2)} µm${coats > 1 ? `, ${coats} coats` : ''}`,
    parts: parts.map(({ pigment, parts: count, letDown = false }) => ({
      label: labelIn(studio, pigment),
      parts: count,
      letDown,
      cm3: day.weighable ? cm3Up((amount.paste * count) / total) : null,
    })),
    steps: mixingSteps(plan, studio, number),
    lots: lots.every((of) => of.length === 0)
      ? ''
      : lots.map((of) => (of.length === 0 ? '–' : of.join(' and '))).join(', '),
    instead:
      swap === null
        ? null
        : `Without toxic pigments: ${number(swap.deltaE00, 1)} from the colour that was planned.`,
  };
}
