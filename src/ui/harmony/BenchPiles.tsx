import { differenceWords } from '../../colour/words.ts';
import { benchOf } from '../../mixture/bench.ts';
import { mostlyFilm } from '../../mixture/film.ts';
import { type Answer, type Mixture, REACH } from '../../mixture/mixture.ts';
import { ofParts } from '../../mixture/predict.ts';
import { shortfallOf, shortfallWords } from '../../mixture/shortfall.ts';
import { BesideWanted } from '../drawn/BesideWanted.tsx';
import { shownOf } from '../drawn/screen.ts';
import { HoldUp } from '../held/HoldUp.tsx';
import { shelf } from '../studio.ts';
import { ExpectedLine } from '../swatches/ExpectedLine.tsx';
import { say } from '../words/frame.ts';
import { mixSay } from '../words/mixing.ts';
import { LaidRow, LetDowns } from './LaidPiles.tsx';
import { labelOn } from './mix/named.ts';

/** Piles of one mixture, its colour beside the target, and the difference in words. */
export function BenchPiles({
  answer,
  mixture,
  heading,
}: {
  answer: Answer;
  mixture: Mixture;
  heading: string;
}) {
  const on = shelf.value;
  const wanted = answer.target;
  const bench = benchOf(mixture, on);
  const mixed = { name: say.mixed, hex: shownOf(bench.lab) };
  const film = mostlyFilm(ofParts(bench.pigments), on);
  // Only the closest mixture proves a shortfall of the shelf; a simpler one may miss by choice.
  const shortfall = mixture.reachable ? null : shortfallOf(wanted, answer);
  return (
    <div class="piles">
      <h3>{heading}</h3>
      <div class="piles-drawn">
        <LaidRow bench={bench} mixed={say.mixed} />
        <div class="beside-held">
          <BesideWanted
            wanted={{ name: say.wanted, hex: shownOf(wanted) }}
            mixed={mixed}
            reachable={mixture.reachable || answer.reachable}
          />
          <HoldUp
            colours={[
              { name: say.wanted, lab: wanted },
              { name: say.mixed, lab: bench.lab },
            ]}
          />
        </div>
      </div>
      <p>{say.differs[differenceWords(bench.deltaE00)]}</p>
      <ExpectedLine parts={bench.pigments} />
      {film && <p>{mixSay.film(labelOn(film, on))}</p>}
      {bench.deltaE00 > REACH && benchOf(answer, on).deltaE00 <= REACH && (
        <p>{say.closestReaches}</p>
      )}
      {shortfall && <p>{shortfallWords(shortfall)}</p>}
      <LetDowns bench={bench} />
    </div>
  );
}
