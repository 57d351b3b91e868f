import { filmCm3 } from '../pigment/paste.ts';
import { fail, ok, type Result } from '../result.ts';
import { FILMS } from './film-kinds.ts';
import {
  type Allowance,
  MOST_CM2,
  MOST_COATS,
  MOST_UM,
  type PaletteFault,
} from './palette-faults.ts';
import { type Passage, type PassagePile, sharesOf } from './passage.ts';

/**
 * Allowances on top of the bare film: tooth and waste as shares, the heap in cm3 per pile (common
 * practice, estimates).
 */
export interface Allowances {
  readonly tooth: number;
  readonly waste: number;
  readonly heapCm3: number;
}
export const ALLOWANCES: Allowances = { tooth: 0.1, waste: 0.2, heapCm3: 0.5 };

/** Amount of a pile, not rounded. All volumes in cm3. */
export interface PileAmount {
  /** Area × film × coats. */
  readonly net: number;
  /** What the ground takes: net plus tooth. */
  readonly need: number;
  /** The whole pile: need, waste and the least heap, spare oil included. */
  readonly prepare: number;
  readonly paste: number;
  readonly spareOil: number;
  /** Paste of each pigment; they sum to `paste`. */
  readonly pigments: readonly { readonly pigment: string; readonly cm3: number }[];
  /** Let-down piles to mix first, each as large as this pile needs. */
  readonly letDowns: readonly {
    readonly pigment: string;
    readonly white: string;
    readonly whiteParts: number;
    readonly cm3: number;
  }[];
}

/** net × (1 + tooth) × (1 + waste) + heap, cm3. */
export const prepareCm3 = (net: number, { tooth, waste, heapCm3 }: Allowances): number =>
  net * (1 + tooth) * (1 + waste) + heapCm3;

/**
 * Computes how much of a pile to prepare.
 * @returns the amount, or every fault of the request
 */
export function amountOf(
  pile: PassagePile,
  passage: Pick<Passage, 'name' | 'canvas'>,
  studio: Allowances = ALLOWANCES,
): Result<PileAmount, readonly PaletteFault[]> {
  const faults = faultsOf(pile, passage);
  if (faults.length > 0 || pile.parts === null) return fail(faults);
  const { cover, coats = 1 } = pile;
  const canvas = passage.canvas ? passage.canvas.widthCm * passage.canvas.heightCm : 0;
  const cm2 = 'cm2' in cover ? cover.cm2 : cover.share * canvas;
  const net = filmCm3(cm2, filmUmOf(pile)) * coats;
  const allow = {
    tooth: pile.tooth ?? studio.tooth,
    waste: pile.waste ?? studio.waste,
    heapCm3: pile.heapCm3 ?? studio.heapCm3,
  };
  const prepare = prepareCm3(net, allow);
  const paste = prepare / (1 + spareOilOf(pile));
  const letDowns = pile.letDowns ?? [];
  const total = pile.parts.reduce((sum, one) => sum + one.parts, 0);
  return ok({
    net,
    need: net * (1 + allow.tooth),
    prepare,
    paste,
    spareOil: prepare - paste,
    pigments: sharesOf(pile.parts, letDowns).map(({ pigment, share }) => ({
      pigment,
      cm3: share * paste,
    })),
    letDowns: pile.parts.flatMap(({ pigment, parts, letDown }) => {
      const weak = letDown ? letDowns.find((one) => one.pigment === pigment) : undefined;
      if (weak === undefined) return [];
      const { white, whiteParts } = weak;
      return [{ pigment, white, whiteParts, cm3: (parts / total) * paste }];
    }),
  });
}

/** Wet thickness of a film, micrometres: its own, or its kind's usual one. */
export const filmUmOf = ({ film, filmUm }: Pick<PassagePile, 'film' | 'filmUm'>): number =>
  filmUm ?? FILMS[film].usual;
/** Added oil of a film, cm3 per cm3 of paste: its own, or its kind's usual one. */
export const spareOilOf = ({ film, spareOil }: Pick<PassagePile, 'film' | 'spareOil'>): number =>
  spareOil ?? FILMS[film].spareOil;

function faultsOf(pile: PassagePile, passage: Pick<Passage, 'name' | 'canvas'>): PaletteFault[] {
  const { name, cover, parts, coats = 1 } = pile;
  const faults: PaletteFault[] = [];
  const { canvas } = passage;
  const sized = canvas === undefined || (canvas.widthCm > 0 && canvas.heightCm > 0);
  if (!sized) faults.push({ code: 'canvas-size', passage: passage.name });
  if ('share' in cover && !(cover.share > 0 && cover.share <= 1))
    faults.push({ code: 'area-share', pile: name, share: cover.share });
  else if ('share' in cover && canvas === undefined)
    faults.push({ code: 'canvas-missing', pile: name, passage: passage.name });
  else if ('cm2' in cover && !(cover.cm2 > 0)) faults.push({ code: 'area-none', pile: name });
  const cm2 =
    'cm2' in cover ? cover.cm2 : cover.share * (canvas ? canvas.widthCm * canvas.heightCm : 0);
  if (cm2 > MOST_CM2) faults.push({ code: 'area-huge', pile: name, cm2 });
  const um = filmUmOf(pile);
  if (!(um > 0)) faults.push({ code: 'film-not-a-thickness', pile: name, um });
  else if (um > MOST_UM) faults.push({ code: 'film-huge', pile: name, um });
  if (!(Number.isInteger(coats) && coats >= 1 && coats <= MOST_COATS))
    faults.push({ code: 'coats', pile: name, coats });
  const allowed: [Allowance, number | undefined, number][] = [
    ['tooth', pile.tooth, 5],
    ['waste', pile.waste, 5],
    ['heap', pile.heapCm3, 100],
    ['oil', pile.spareOil, 5],
  ];
  for (const [which, value, most] of allowed)
    if (value !== undefined && !(value >= 0 && value <= most))
      faults.push({ code: 'allowance', pile: name, which });
  if (parts === null) return faults;
  if (parts.length === 0 || !parts.every((one) => one.parts > 0 && Number.isFinite(one.parts)))
    faults.push({ code: 'parts', pile: name });
  for (const { pigment, letDown } of parts)
    if (letDown && !pile.letDowns?.some((one) => one.pigment === pigment && one.whiteParts > 0))
      faults.push({ code: 'letdown-missing', pile: name, pigment });
  return faults;
}
