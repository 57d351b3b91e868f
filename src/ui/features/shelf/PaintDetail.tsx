import { entryHazardOf } from '../../../pigment/entry-hazard.ts';
import { markWhite } from '../../../pigment/mark-white.ts';
import { curveOfEntry } from '../../../pigment/mixing-shelf.ts';
import { pigmentOf } from '../../../pigment/pigment-facts.ts';
import { draftOf, type StockEntry } from '../../../pigment/stock.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { BinIcon, CautionIcon } from '../../components/drawn/icons.tsx';
import { newId } from '../../state/new-id.ts';
import { go, hrefOf } from '../../state/route.ts';
import {
  HAZARD_WORDS,
  SHORT_PROVENANCE_WORDS,
  STOCK_FORM_WORDS,
  shelfTexts,
} from '../../texts/shelf-texts.ts';
import { ContainerIcon } from './ContainerIcon.tsx';
import { CurveProvenance } from './CurveProvenance.tsx';
import { LotReplacement } from './LotReplacement.tsx';
import { PaintFacts } from './PaintFacts.tsx';
import { amountWords, gradeWords } from './PaintLine.tsx';
import { strokesOf } from './paint-strokes.ts';
import { lineOf } from './shelf-search.ts';
import { add, duplicate, isStocked, mark, remove, shownStock } from './stock-state.ts';

const TINTS = [2, 10] as const;

/** One paint in full: brushed out, with its hazards, its actions and its data. */
export function PaintDetail({ entry }: { entry: StockEntry }) {
  const stock = shownStock.value;
  const line = lineOf(stock, entry);
  const paint = curveOfEntry(stock, entry);
  const strokes = strokesOf(stock, paint, TINTS);
  const tints = strokes.slice(1).map(({ words }) => words);
  return (
    <article class="shelf-detail">
      <h2 tabIndex={-1}>{line.name}</h2>
      {isStocked.value && (
        <p class="shelf-particulars">
          <ContainerIcon form={entry.form} />
          {[
            STOCK_FORM_WORDS[entry.form],
            amountWords(entry) || shelfTexts.notWeighed,
            gradeWords(entry),
          ]
            .filter(Boolean)
            .join(' · ')}
        </p>
      )}
      {paint === null ? (
        <p>{shelfTexts.curveNone}</p>
      ) : (
        <figure class="shelf-brushed">
          <BrushedPaint
            strokes={strokes}
            name={entry.pigment}
            width={480}
            height={104}
            label={shelfTexts.brushed(line.name, tints)}
          />
          <figcaption>
            {strokes.map(({ words }, i) => (
              <span key={words} style={{ flex: i === 0 ? '1.5' : '1' }}>
                {words}
              </span>
            ))}
          </figcaption>
        </figure>
      )}
      {paint !== null && <CurveProvenance entry={entry} />}
      <Actions entry={entry} />
      <Hazard entry={entry} />
      <PaintFacts line={line} />
      {isStocked.value && paint !== null && <LotReplacement entry={entry} paint={paint} />}
    </article>
  );
}

function Actions({ entry }: { entry: StockEntry }) {
  const { id } = entry;
  const stock = shownStock.value;
  if (!isStocked.value)
    return (
      <p class="shelf-actions">
        <button type="button" onClick={() => void take(entry.pigment)}>
          {shelfTexts.take}
        </button>
      </p>
    );
  const isWhite = stock.white === id;
  return (
    <>
      {isWhite && <p>{shelfTexts.isWhite}</p>}
      <p class="shelf-actions">
        <a class="button" href={hrefOf('book', 'shelf', id, 'edit')}>
          {shelfTexts.edit}
        </a>
        {!isWhite && markWhite(stock, id).ok && (
          <button type="button" onClick={() => void mark(id)}>
            {shelfTexts.markWhite}
          </button>
        )}
        {isWhite && (
          <button type="button" class="quiet" onClick={() => void mark(null)}>
            {shelfTexts.unmarkWhite}
          </button>
        )}
        <button
          type="button"
          class="quiet"
          onClick={() =>
            void duplicate(id).then((copy) => {
              if (copy !== null) go('book', 'shelf', copy, 'edit');
            })
          }
        >
          {shelfTexts.duplicate}
        </button>
        <button
          type="button"
          class="quiet"
          onClick={() =>
            void remove(id).then((removed) => {
              if (removed) go('book', 'shelf');
            })
          }
        >
          <BinIcon size={20} />
          {shelfTexts.remove}
        </button>
      </p>
    </>
  );
}

/** Makes a paint of the starter shelf the first of the studio's own shelf. */
async function take(pigment: string): Promise<void> {
  const id = newId();
  const added = await add({ draft: draftOf(pigment), own: null }, id);
  if (added.ok) go('book', 'shelf', id);
}

function Hazard({ entry }: { entry: StockEntry }) {
  const { level, hazard, caution, dryRefused } = entryHazardOf(shownStock.value, entry);
  const facts = pigmentOf(entry.pigment);
  const known = facts && SHORT_PROVENANCE_WORDS[facts.hazard.status];
  const grave = level === 'toxic' || level === 'very_toxic';
  return (
    <section class="shelf-caution" data-grave={grave ? 'yes' : 'no'}>
      <h3>
        {level !== 'low' && <CautionIcon size={22} />}
        {shelfTexts.hazard}: {HAZARD_WORDS[level].toLowerCase()}
      </h3>
      {dryRefused && <p class="shelf-strong">{shelfTexts.dryRefused}</p>}
      <p>{hazard}</p>
      {caution !== '' && <p>{caution}</p>}
      <p class="small">
        {known && `${known.charAt(0).toUpperCase()}${known.slice(1)}. `}
        {shelfTexts.defers}
      </p>
    </section>
  );
}
