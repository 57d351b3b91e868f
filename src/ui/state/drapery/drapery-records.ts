import type { DraperyBody, GarmentRecord } from '../../../book/schema/drapery.ts';
import {
  type Cloth,
  type ClothRequest,
  DRAPERY_WAYS,
  type Garment,
} from '../../../drapery/cloth-types.ts';
import { FABRICS } from '../../../drapery/fabric.ts';
import { clothOnly, type Scheme, type SchemeGarment } from './drapery-scheme.ts';

const LINING = ', lining';
const TRIM = ', trim';

function recordOf(cloth: Cloth, name: string, asked: ClothRequest | undefined): GarmentRecord {
  const { name: _, ...wish } = asked ? clothOnly(asked) : { name };
  return {
    name,
    way: cloth.way,
    stuff: cloth.stuff,
    folds: [...cloth.folds, ...(cloth.reflected ? [cloth.reflected] : [])].map(
      ({ step, lab, mixture }) => ({ step, lab, mixture }),
    ),
    ...('lab' in wish ? { wish } : {}),
  };
}

/**
 * A garment in its stored form: its own record, then those of its lining and trim, named after it.
 * Each record has its ladder and its request.
 */
export function recordsOf(garment: Garment, { wish, share }: SchemeGarment): GarmentRecord[] {
  const { name, lining, trim } = garment;
  return [
    { ...recordOf(garment, name, wish), share },
    ...(lining ? [recordOf(lining, `${name}${LINING}`, wish.lining)] : []),
    ...(trim ? [recordOf(trim, `${name}${TRIM}`, wish.trim)] : []),
  ];
}

/**
 * The scheme of a stored drapery. Records of older books have no requests: estimate them from the
 * ladders.
 */
export function schemeFromRecord({ name, harmony, garments }: DraperyBody): Scheme {
  const worn: SchemeGarment[] = [];
  for (const record of garments) {
    const wish = requestFromRecord(record);
    const owner = worn.at(-1);
    const part = owner && partFromName(record.name, owner.wish.name);
    if (owner && part) worn[worn.length - 1] = { ...owner, wish: { ...owner.wish, [part]: wish } };
    else worn.push({ wish, share: record.share ?? 1 / garments.length });
  }
  return { name, harmony, garments: worn };
}

/** Whether every record of a stored drapery has its request. */
export const hasAllRequests = ({ garments }: DraperyBody): boolean =>
  garments.every(({ wish }) => wish !== undefined);

const partFromName = (name: string, owner: string) =>
  name === `${owner}${LINING}` ? 'lining' : name === `${owner}${TRIM}` ? 'trim' : null;

function requestFromRecord({ name, way, stuff, folds, wish }: GarmentRecord): ClothRequest {
  if (wish) return { name, ...wish };
  const steps = folds.slice(0, 6).map(({ lab }) => lab);
  const known = DRAPERY_WAYS.find((one) => one === way);
  return {
    name,
    lab: steps[2] ?? [50, 0, 0],
    way: known ?? 'deepened in its own hue',
    stuff: FABRICS.find((one) => one === stuff) ?? 'wool',
    ...(known === 'as nature had it' && steps.length === 6 ? { ladder: steps } : {}),
    ...(known === 'shot cloth' && steps[4] ? { shadows: steps[4] } : {}),
  };
}
