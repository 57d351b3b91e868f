import type { FitFound } from '../../../../workers/calibration.ts';
import { fittedPaintsOf } from '../../../calibration/accept-calibration.ts';
import { evidenceOfCurve, evidenceOfFit } from '../../../calibration/curve-evidence.ts';
import { evidenceWords } from '../../../messages/curve-evidence-text.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { calibrationTexts, dayWords, today } from '../../texts/calibration-texts.ts';
import { ownStock } from '../shelf/stock-state.ts';

/** The provenance and expected error of each paint's curve, now and after the fit. */
export function TrustChange({ fit }: { fit: FitFound }) {
  const stock = ownStock.value;
  return (
    <ul class="swatch-trust">
      {fittedPaintsOf(fit).map((paint) => {
        const entry = stock.entries.find(({ id }) => id === paint.pigment);
        const now = evidenceOfCurve(entry?.curve ?? null);
        return (
          <li key={paint.pigment}>
            <h3>{paint.label}</h3>
            <dl>
              <div>
                <dt>{calibrationTexts.now}</dt>
                <dd>
                  {now.known === 'handbook'
                    ? calibrationTexts.handbook
                    : evidenceWords({ ...now, date: now.date && dayWords(now.date) }, formatNumber)}
                </dd>
              </div>
              <div>
                <dt>{calibrationTexts.afterwards}</dt>
                <dd>{evidenceWords(evidenceOfFit(paint, dayWords(today())), formatNumber)}</dd>
              </div>
            </dl>
          </li>
        );
      })}
    </ul>
  );
}
