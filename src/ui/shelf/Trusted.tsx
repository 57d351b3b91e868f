import { errorWords, trustOfCurve, trustWords } from '../../pigment/calibrate/trust.ts';
import { keptCurveOf } from '../../pigment/mixable.ts';
import type { StockEntry } from '../../pigment/stock.ts';
import { said } from '../locale.ts';
import { hrefTo } from '../swatches/routes.ts';
import { sayShelf } from '../words/shelf.ts';
import { dayWords, saySwatches } from '../words/swatches.ts';
import { isStocked, putHandbookBack, shownStock } from './state.ts';

/**
 * Where a paint's curve comes from, its date and its expected error, with a link to calibration.
 */
export function Trusted({ entry }: { entry: StockEntry }) {
  const curve = keptCurveOf(shownStock.value, entry);
  const trust = trustOfCurve(curve);
  // A custom pigment has no handbook curve to return to.
  const isOwn = shownStock.value.own.some(({ id }) => id === entry.pigment);
  return (
    <section>
      <h3>{saySwatches.trustOne}</h3>
      <p>
        {curve && !curve.trust
          ? `${sayShelf.curveOf[curve.known]} ${said(errorWords(trust.expected))}`
          : said(trustWords({ ...trust, date: trust.date && dayWords(trust.date) }))}
      </p>
      {isStocked.value && (
        <p class="shelf-actions">
          <a class="button shelf-quiet" href={hrefTo()}>
            {saySwatches.link}
          </a>
          {entry.curve && !isOwn && (
            <button type="button" class="quiet" onClick={() => void putHandbookBack(entry.id)}>
              {saySwatches.handbookBack}
            </button>
          )}
        </p>
      )}
    </section>
  );
}
