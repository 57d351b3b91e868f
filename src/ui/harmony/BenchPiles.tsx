import { hexOf } from '../../colour/hex.ts';
import type { Lab } from '../../colour/lab.ts';
import { differenceWords } from '../../colour/words.ts';
import type { Mixture } from '../../mixture/mixture.ts';
import { masstonesOf } from '../../pigment/near.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { PileRow } from '../drawn/PileRow.tsx';
import { shelf } from '../studio.ts';
import { say } from '../words.ts';

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
  const masstones = masstonesOf(shelf.value);
  const piles = mixture.parts.map(({ pigment, parts }) => {
    const found = masstones.find((paint) => paint.pigment === pigment);
    return {
      name: found?.label ?? pigment,
      hex: found ? hexOf(found.lab) : '#808080',
      parts,
    };
  });
  return (
    <div class="piles">
      <h3>{heading}</h3>
      <div class="piles-drawn">
        <PileRow piles={piles} mixed={{ name: say.mixed, hex: hexOf(mixture.partsLab) }} />
        <BesideWanted
          wanted={{ name: say.wanted, hex: hexOf(wanted) }}
          mixed={{ name: say.mixed, hex: hexOf(mixture.partsLab) }}
          reachable={mixture.reachable}
        />
      </div>
      <p>{say.differs[differenceWords(mixture.partsDeltaE00)]}</p>
      {!mixture.reachable && <p>{say.outOfReach}</p>}
    </div>
  );
}
