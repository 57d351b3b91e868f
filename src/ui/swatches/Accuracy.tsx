import { deltaE00 } from '../../colour/difference.ts';
import { differenceWords } from '../../colour/words.ts';
import { accuracyWords } from '../../pigment/calibrate/pile.ts';
import { shownOf } from '../drawn/screen.ts';
import { figure, said } from '../locale.ts';
import { Brushed } from '../shelf/Brushed.tsx';
import { dayWords, saySwatches } from '../words/swatches.ts';
import { AccuracyChart } from './AccuracyChart.tsx';
import { removeEntry } from './cards.ts';
import { accuracy, lessons } from './records.ts';

/**
 * Logged piles, each predicted beside observed colour, and the accuracy of predictions over time.
 */
export function Accuracy() {
  const { piles } = lessons.value!;
  if (piles.length === 0) return <p class="small">{saySwatches.noPiles}</p>;
  return (
    <>
      {accuracy.value.piles.length > 1 && (
        <>
          <h3>{saySwatches.accuracyHeading}</h3>
          <AccuracyChart piles={accuracy.value.piles} />
        </>
      )}
      <p>{said(accuracyWords(accuracy.value))}</p>
      <ul class="swatch-lines">
        {piles.map((pile) => {
          const { name, date, seen, mixture, note } = pile.body;
          const off = deltaE00(mixture.partsLab, seen);
          return (
            <li key={pile.id} class="swatch-logged">
              <Brushed
                name={pile.id}
                width={110}
                height={38}
                strokes={[
                  { hex: shownOf(mixture.partsLab), words: saySwatches.pileForeseen },
                  { hex: shownOf(seen), words: saySwatches.pileCameOut },
                ]}
                label={`${saySwatches.pileForeseen}, ${saySwatches.pileCameOut}`}
              />
              <span>
                <strong>{name}</strong>
                <br />
                <span class="small">
                  {dayWords(date)}: {saySwatches.differs[differenceWords(off)]} ({figure(off, 1)})
                  {note && `. ${note}`}
                </span>
              </span>
              <button
                type="button"
                class="quiet"
                aria-label={`${saySwatches.remove}: ${name}`}
                onClick={() => void removeEntry(pile)}
              >
                {saySwatches.remove}
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
