import { evidenceOfCurve } from '../../../calibration/curve-evidence.ts';
import { entryHazardOf } from '../../../pigment/entry-hazard.ts';
import { curveOfEntry, studioCurveOf } from '../../../pigment/mixing-shelf.ts';
import type { StockEntry } from '../../../pigment/stock.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { CautionIcon } from '../../components/drawn/icons.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { hrefOf, route } from '../../state/route.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { HAZARD_WORDS, STOCK_FORM_WORDS, shelfTexts } from '../../texts/shelf-texts.ts';
import { ContainerIcon } from './ContainerIcon.tsx';
import { strokesOf } from './paint-strokes.ts';
import type { ShelfLine } from './shelf-search.ts';
import { isStocked, shownStock } from './stock-state.ts';

/** Grade and lot where known, such as "fine, lot 7". */
export const gradeWords = ({ grade, lot }: StockEntry): string =>
  [grade, lot === '' ? '' : /^lot\b/i.test(lot) ? lot : `lot ${lot}`].filter(Boolean).join(', ');

/** The amount, such as "40 ml"; '' when it was never weighed. */
export const amountWords = ({ amount, unit }: StockEntry): string =>
  amount === null ? '' : amount === 0 ? shelfTexts.usedUp : `${formatNumber(amount, 0, 3)} ${unit}`;

/** One paint in the list: brushed out, with its name, amount and hazards. */
export function PaintLine({ line }: { line: ShelfLine }) {
  const { entry, name, lab } = line;
  const stock = shownStock.value;
  const strokes = strokesOf(stock, curveOfEntry(stock, entry), [6]);
  const { level } = entryHazardOf(stock, entry);
  const curve = studioCurveOf(stock, entry);
  const particulars = isStocked.value
    ? [STOCK_FORM_WORDS[entry.form], amountWords(entry), gradeWords(entry)]
        .filter(Boolean)
        .join(' · ')
    : '';
  const open = route.value.within[0] === entry.id;
  return (
    <a
      class="shelf-line"
      href={hrefOf('book', 'shelf', entry.id)}
      aria-current={open ? 'true' : undefined}
      data-entry={entry.id}
    >
      <BrushedPaint strokes={strokes} name={entry.pigment} />
      <span class="shelf-words">
        <span class="shelf-name">{name}</span>
        {particulars && (
          <span class="shelf-particulars">
            <ContainerIcon form={entry.form} size={18} />
            {particulars}
          </span>
        )}
        <span class="shelf-particulars">
          {(level === 'toxic' || level === 'very_toxic') && (
            <strong class="shelf-hazard">
              <CautionIcon size={18} />
              {HAZARD_WORDS[level]}
            </strong>
          )}
          {level === 'caution' && <span>{HAZARD_WORDS[level]}</span>}
          {stock.white === entry.id && <span class="shelf-tag">{shelfTexts.white}</span>}
          {curve && (
            <span class="shelf-tag">
              {calibrationTexts.tags[curve.known]}
              {evidenceOfCurve(curve).rough ? ` (${calibrationTexts.roughTag})` : ''}
            </span>
          )}
          {lab === null && <span class="shelf-tag">{shelfTexts.noCurve}</span>}
        </span>
      </span>
    </a>
  );
}
