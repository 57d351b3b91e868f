import type { FormulaBody } from '../../../book/schema/drapery.ts';
import type { Lab } from '../../../colour/lab.ts';
import type { ClothRequest } from '../../../drapery/cloth-types.ts';
import { FABRICS } from '../../../drapery/fabric.ts';
import { LADDER_STEPS } from '../../../harmony/harmony.ts';
import {
  type ColourOption,
  type GarmentPart,
  MOST_GARMENTS,
  type Scheme,
  type SchemeGarment,
  schemeFromColours,
} from '../../state/drapery/drapery-scheme.ts';

type Passage = FormulaBody['passages'][number];

/** "cloak: trim, half-tone": optional garment, optional part, step. */
const PASSAGE_NAME = new RegExp(`^(?:(.*): )?(?:(lining|trim), )?(${LADDER_STEPS.join('|')})$`);

/** Visible colour of a passage: that of its last layer. Null without layers. */
const visibleColourOf = ({ layers }: Passage): Lab | null => layers.at(-1)?.mixture.lab ?? null;

/**
 * A scheme from a saved formula. Each cloth with all six steps becomes a garment, or the lining or
 * trim of one. Without such a cloth, the passages are offered as the colours of a new scheme. Null
 * if no passage has a colour.
 */
export function schemeFromFormula({ name, subject, passages }: FormulaBody): Scheme | null {
  const cloths = new Map<string, Passage[]>();
  for (const passage of passages) {
    const found = PASSAGE_NAME.exec(passage.name);
    if (!found) continue;
    const key = JSON.stringify([found[1] ?? name, found[2] ?? 'cloth']);
    cloths.set(key, [...(cloths.get(key) ?? []), passage]);
  }
  const stuff = FABRICS.find((one) => subject.includes(one)) ?? 'wool';
  const worn: SchemeGarment[] = [];
  for (const [key, steps] of cloths) {
    const [whose, part] = JSON.parse(key) as [string, GarmentPart];
    const cloth = clothFromPassages(part === 'cloth' ? whose : part, steps, stuff);
    if (!cloth) continue;
    if (part === 'cloth') worn.push({ wish: cloth, share: 1 });
    else {
      const owner = worn.at(-1);
      if (owner?.wish.name === whose)
        worn[worn.length - 1] = { ...owner, wish: { ...owner.wish, [part]: cloth } };
    }
  }
  if (worn.length > 0) return { name: '', harmony: null, garments: worn.slice(0, MOST_GARMENTS) };
  const offered = passages.flatMap((passage): ColourOption[] => {
    const lab = visibleColourOf(passage);
    return lab ? [{ name: passage.name, lab, share: 1 / passages.length, accent: false }] : [];
  });
  return offered.length > 0 ? schemeFromColours('', null, offered) : null;
}

/** A cloth from its six steps, glazed if any step has a glaze; null if a step is missing. */
function clothFromPassages(
  name: string,
  passages: readonly Passage[],
  stuff: ClothRequest['stuff'],
): ClothRequest | null {
  const labs = LADDER_STEPS.map((step) => {
    const passage = passages.find(
      (one) => one.name.endsWith(step) && PASSAGE_NAME.exec(one.name)?.[3] === step,
    );
    return passage ? visibleColourOf(passage) : null;
  });
  if (!labs.every((lab) => lab !== null)) return null;
  const glaze = passages.flatMap(({ layers }) => layers).find(({ film }) => film === 'glaze')
    ?.mixture.parts[0]?.pigment;
  return {
    name,
    lab: labs[2]!,
    stuff,
    ladder: labs,
    ...(glaze
      ? { way: 'underpaint and glaze' as const, glaze }
      : { way: 'as nature had it' as const }),
  };
}
