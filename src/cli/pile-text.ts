import type { Mixture } from '../mixture/mixture-types.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { labelsOf } from './preference-options.ts';

/** A mixture as a bench measures it: "3 Lead white + 1 Smalt let down  (Smalt let down: 1 to 10 Lead white)". */
export function pileText({ parts, letDown }: Mixture, shelf: Shelf): string {
  const named = labelsOf(shelf);
  if (!letDown) return parts.map((one) => `${one.parts} ${named(one.pigment)}`).join(' + ');
  const piles = letDown.parts.map(
    (one) => `${one.parts} ${named(one.pigment)}${one.letDown ? ' let down' : ''}`,
  );
  const how = letDown.letDowns.map(
    (one) =>
      `${named(one.pigment)} let down: ${one.parts} to ${one.whiteParts} ${named(one.white)}`,
  );
  return `${piles.join(' + ')}  (${how.join('; ')})`;
}
