import type { FitFound } from '../../../workers/calibrate.ts';
import { learnt } from '../../pigment/calibrate/calibrate.ts';
import { trustOf, trustOfCurve, trustWords } from '../../pigment/calibrate/trust.ts';
import { said } from '../locale.ts';
import { ownStock } from '../shelf/state.ts';
import { dayWords, saySwatches, today } from '../words/swatches.ts';

/** The provenance and expected error of each paint's curve, now and after the fit. */
export function TrustChange({ fit }: { fit: FitFound }) {
  const stock = ownStock.value;
  return (
    <ul class="swatch-trust">
      {learnt(fit).map((paint) => {
        const entry = stock.entries.find(({ id }) => id === paint.pigment);
        const now = trustOfCurve(entry?.curve ?? null);
        return (
          <li key={paint.pigment}>
            <h3>{paint.label}</h3>
            <dl>
              <div>
                <dt>{saySwatches.now}</dt>
                <dd>
                  {now.known === 'handbook'
                    ? saySwatches.handbook
                    : said(trustWords({ ...now, date: now.date && dayWords(now.date) }))}
                </dd>
              </div>
              <div>
                <dt>{saySwatches.afterwards}</dt>
                <dd>{said(trustWords(trustOf(paint, dayWords(today()))))}</dd>
              </div>
            </dl>
          </li>
        );
      })}
    </ul>
  );
}
