import { resolve } from 'node:path';
import { gather } from '../../src/harmony/gather.ts';
import type { GatheredColour } from '../../src/harmony/harmony.ts';
import { SHARED } from '../shared.ts';
import { readPixels } from './read.ts';

/** Real camera photographs beside the project, with their own sizes. */
export const PHOTOGRAPHS = [
  { name: 'autumn-leaves.jpg', width: 2560, height: 1600 },
  { name: 'dune-grass.jpg', width: 1680, height: 1050 },
  { name: 'gerbera.jpg', width: 1600, height: 1203 },
  { name: 'ladybird-forget-me-nots.jpg', width: 2560, height: 1600 },
  { name: 'marigold.jpg', width: 2560, height: 1600 },
  { name: 'wet-grass.jpg', width: 1920, height: 1200 },
] as const;
export type PhotographName = (typeof PHOTOGRAPHS)[number]['name'];

const GATHERED = new Map<string, Promise<readonly GatheredColour[]>>();

/**
 * What is gathered from a photograph, once for each size.
 * @param width in pixels, scaled by libvips; the file's own where not given
 */
export function coloursOf(
  name: PhotographName,
  width?: number,
): Promise<readonly GatheredColour[]> {
  const key = `${name} ${width}`;
  const known = GATHERED.get(key) ?? gathered(name, width);
  GATHERED.set(key, known);
  return known;
}

async function gathered(name: string, width?: number): Promise<readonly GatheredColour[]> {
  const result = gather(await readPixels(resolve(SHARED, 'photos', name), width));
  if (!result.ok) throw new Error(result.fault.code);
  return result.value.colours;
}
