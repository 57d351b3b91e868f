import { hexOf } from '../../colour/hex.ts';
import type { Lab } from '../../colour/lab.ts';
import { differenceWords } from '../../colour/words.ts';
import { benchOf } from '../../mixture/bench.ts';
import type { Mixture } from '../../mixture/mixture.ts';
import { shortfallOf, shortfallWords } from '../../mixture/shortfall.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { PileRow } from '../drawn/PileRow.tsx';
import { shelf } from '../studio.ts';
import { say } from '../words.ts';
import { hexOn, labelOn, spokenOn } from './mix/named.ts';
import { mixSay } from './mix/words.ts';

/** The piles of one mixture, the colour they make beside the colour that is wanted, and how near it is. */
export function BenchPiles({
  wanted,
  mixture,
  heading,
}: {
  wanted: Lab;
  mixture: Mixture;
  heading: string;
}) {
  const on = shelf.value;
  const bench = benchOf(mixture, on);
  const pile = (pigment: string, parts: number) => ({
    name: labelOn(pigment, bench.shelf),
    hex: hexOn(pigment, bench.shelf),
    parts,
  });
  const mixed = { name: say.mixed, hex: hexOf(bench.lab) };
  const shortfall = shortfallOf(wanted, mixture);
  return (
    <div class="piles">
      <h3>{heading}</h3>
      <div class="piles-drawn">
        <PileRow
          piles={bench.parts.map(({ pigment, parts }) => pile(pigment, parts))}
          mixed={mixed}
        />
        <BesideWanted
          wanted={{ name: say.wanted, hex: hexOf(wanted) }}
          mixed={mixed}
          reachable={mixture.reachable}
        />
      </div>
      <p>{say.differs[differenceWords(bench.deltaE00)]}</p>
      {shortfall && <p>{shortfallWords(shortfall)}</p>}
      {bench.letDowns.length > 0 && (
        <div class="mix-let-downs">
          {bench.letDowns.map(({ name, pigment, white, parts, whiteParts }) => (
            <div class="mix-let-down" key={name}>
              <PileRow
                piles={[pile(pigment, parts), pile(white, whiteParts)]}
                mixed={{ name: labelOn(name, bench.shelf), hex: hexOn(name, bench.shelf) }}
              />
              <p>{mixSay.letDown(labelOn(pigment, on), whiteParts, spokenOn(white, on))}</p>
            </div>
          ))}
        </div>
      )}
    </div>
  );
}
