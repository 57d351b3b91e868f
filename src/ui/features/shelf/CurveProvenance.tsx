import { evidenceOfCurve } from '../../../calibration/curve-evidence.ts';
import { errorWords, evidenceWords } from '../../../messages/curve-evidence-text.ts';
import { studioCurveOf } from '../../../pigment/mixing-shelf.ts';
import type { StockEntry } from '../../../pigment/stock.ts';
import { formatNumber } from '../../state/locale-format.ts';
import { calibrationTexts, dayWords } from '../../texts/calibration-texts.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { hrefTo } from '../calibration/calibration-routes.ts';
import { isStocked, putHandbookBack, shownStock } from './stock-state.ts';

/**
 * Where a paint's curve comes from, its date and its expected error, with a link to calibration.
 */
export function CurveProvenance({ entry }: { entry: StockEntry }) {
  const curve = studioCurveOf(shownStock.value, entry);
  const trust = evidenceOfCurve(curve);
  // A custom pigment has no handbook curve to return to.
  const isOwn = shownStock.value.own.some(({ id }) => id === entry.pigment);
  return (
    <section>
      <h3>{calibrationTexts.trustOne}</h3>
      <p>
        {curve && !curve.trust
          ? `${shelfTexts.curveOf[curve.known]} ${errorWords(trust.expected, formatNumber)}`
          : evidenceWords({ ...trust, date: trust.date && dayWords(trust.date) }, formatNumber)}
      </p>
      {isStocked.value && (
        <p class="shelf-actions">
          <a class="button shelf-quiet" href={hrefTo()}>
            {calibrationTexts.link}
          </a>
          {entry.curve && !isOwn && (
            <button type="button" class="quiet" onClick={() => void putHandbookBack(entry.id)}>
              {calibrationTexts.handbookBack}
            </button>
          )}
        </p>
      )}
    </section>
  );
}
