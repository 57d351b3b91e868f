import { breakLines } from './label-text.ts';

/** One pigment of a recipe, ready to draw. */
export interface RecipePile {
  readonly name: string;
  readonly hex: string;
  readonly parts: number;
}

/** Font size, px. */
export const RECIPE_FONT_PX = 13;
const LINE = 16;

/** Layout of a recipe's drawing, px. */
interface RecipeLayout {
  readonly width: number;
  readonly height: number;
  readonly piles: readonly {
    readonly x: number;
    readonly y: number;
    readonly radius: number;
    readonly lines: readonly string[];
    /** Centre of the words, and baseline of the first line. */
    readonly words: { readonly x: number; readonly y: number };
  }[];
  /** The mixed pile. */
  readonly mixed: { readonly x: number; readonly y: number; readonly radius: number };
}

/**
 * Lays out a recipe: piles in rows from the left, with areas proportional to their parts, and the
 * mixed pile at the right (below in a narrow drawing), with the area of all of them up to a limit.
 *
 * @param width px
 * @param says first line under each pile, its amount; its name follows
 */
export function layOutRecipe(
  piles: readonly RecipePile[],
  width: number,
  says: (pile: RecipePile) => string,
): RecipeLayout {
  const narrow = width < 460;
  const room = narrow ? width : width - 190;
  const most = Math.max(1, Math.floor(room / 92));
  const perRow = Math.max(1, Math.ceil(piles.length / Math.ceil(Math.max(1, piles.length) / most)));
  const cell = Math.min(150, room / perRow);
  const largest = piles.reduce((most, { parts }) => Math.max(most, parts), 0) || 1;
  const all = piles.reduce((sum, { parts }) => sum + Math.max(0, parts), 0);
  const unit = Math.min(cell * 0.42, 46) / Math.sqrt(largest);
  const row = 2 * Math.min(cell * 0.42, 46) + 3 * LINE + 18;
  const laid = piles.map((pile, k) => {
    const x = cell * ((k % perRow) + 0.5);
    const y = row * Math.floor(k / perRow) + Math.min(cell * 0.42, 46) + 8;
    const radius = unit * Math.sqrt(Math.max(0, pile.parts));
    return {
      x,
      y,
      radius,
      lines: [says(pile), ...breakLines(pile.name, RECIPE_FONT_PX, cell - 8)],
      words: { x, y: y + Math.min(cell * 0.42, 46) + 22 },
    };
  });
  const rows = Math.ceil(piles.length / perRow);
  const radius = Math.min(78, unit * Math.sqrt(all));
  const height = Math.max(row * rows, 2 * radius + 40);
  return narrow
    ? {
        width,
        height: height + 2 * radius + 40,
        piles: laid,
        mixed: { x: width / 2, y: height + radius + 10, radius },
      }
    : {
        width,
        height,
        piles: laid,
        mixed: {
          x: Math.min(width - 95, cell * perRow + 170),
          y: Math.max(radius + 12, row * 0.42),
          radius,
        },
      };
}
