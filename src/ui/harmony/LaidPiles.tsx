import type { Bench } from '../../mixture/bench.ts';
import { PileRow } from '../drawn/PileRow.tsx';
import { shownOf } from '../drawn/screen.ts';
import { shelf } from '../studio.ts';
import { mixSay } from '../words/mixing.ts';
import { hexOn, labelOn, spokenOn } from './mix/named.ts';

/**
 * Piles of a recipe in whole parts, with each let-down in its own row.
 * @param mixed name of the result
 */
export function LaidPiles({ bench, mixed }: { bench: Bench; mixed: string }) {
  return (
    <div class="piles">
      <LaidRow bench={bench} mixed={mixed} />
      <LetDowns bench={bench} />
    </div>
  );
}

/** Props of one pile; `on` must contain the pigment. */
const heap = (pigment: string, parts: number, on: Bench['shelf']) => ({
  name: labelOn(pigment, on),
  hex: hexOn(pigment, on),
  parts,
});

/** One row of piles and the colour that they make. */
export function LaidRow({ bench, mixed }: { bench: Bench; mixed: string }) {
  return (
    <PileRow
      piles={bench.parts.map(({ pigment, parts }) => heap(pigment, parts, bench.shelf))}
      mixed={{ name: mixed, hex: shownOf(bench.lab) }}
    />
  );
}

/** Each let-down with its ratio and reason. */
export function LetDowns({ bench }: { bench: Bench }) {
  if (bench.letDowns.length === 0) return null;
  const on = shelf.value;
  return (
    <div class="mix-let-downs">
      {bench.letDowns.map(({ name, pigment, white, parts, whiteParts }) => (
        <div class="mix-let-down" key={name}>
          <PileRow
            piles={[heap(pigment, parts, on), heap(white, whiteParts, on)]}
            mixed={{ name: labelOn(name, bench.shelf), hex: hexOn(name, bench.shelf) }}
          />
          <p>{mixSay.letDown(labelOn(pigment, on), whiteParts, spokenOn(white, on))}</p>
        </div>
      ))}
    </div>
  );
}
