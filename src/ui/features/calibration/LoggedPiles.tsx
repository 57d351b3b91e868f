import { differenceWords } from '../../../colour/describe-colour.ts';
import { deltaE00 } from '../../../colour/difference.ts';
import { accuracyWords } from '../../../messages/curve-evidence-text.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { accuracy, evidenceEntries } from '../../state/calibration/evidence.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts, dayWords } from '../../texts/calibration-texts.ts';
import { AccuracyChart } from './AccuracyChart.tsx';
import { binEntry } from './swatch-cards.ts';

/**
 * Logged piles, each predicted beside observed colour, and the accuracy of predictions over time.
 */
export function LoggedPiles() {
  const { piles } = evidenceEntries.value!;
  if (piles.length === 0) return <p class="small">{calibrationTexts.noPiles}</p>;
  return (
    <>
      {accuracy.value.piles.length > 1 && (
        <>
          <h3>{calibrationTexts.accuracyHeading}</h3>
          <AccuracyChart piles={accuracy.value.piles} />
        </>
      )}
      <p>{accuracyWords(accuracy.value, formatNumber)}</p>
      <ul class="swatch-lines">
        {piles.map((pile) => {
          const { name, date, seen, mixture, note } = pile.body;
          const off = deltaE00(mixture.partsLab, seen);
          return (
            <li key={pile.id} class="swatch-logged">
              <BrushedPaint
                name={pile.id}
                width={110}
                height={38}
                strokes={[
                  { hex: cssColourOf(mixture.partsLab), words: calibrationTexts.pileForeseen },
                  { hex: cssColourOf(seen), words: calibrationTexts.pileCameOut },
                ]}
                label={`${calibrationTexts.pileForeseen}, ${calibrationTexts.pileCameOut}`}
              />
              <span>
                <strong>{name}</strong>
                <br />
                <span class="small">
                  {dayWords(date)}: {calibrationTexts.differs[differenceWords(off)]} (
                  {formatNumber(off, 1)}){note && `. ${note}`}
                </span>
              </span>
              <button
                type="button"
                class="quiet"
                aria-label={`${calibrationTexts.remove}: ${name}`}
                onClick={() => void binEntry(pile)}
              >
                {calibrationTexts.remove}
              </button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
