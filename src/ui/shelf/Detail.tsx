import { cautionOf } from '../../pigment/caution.ts';
import { pigmentOf } from '../../pigment/facts.ts';
import { markWhite } from '../../pigment/mark.ts';
import { curveOfEntry } from '../../pigment/mixable.ts';
import { draftOf, type StockEntry } from '../../pigment/stock.ts';
import { BinIcon, CautionIcon } from '../drawn/icons.tsx';
import { go, hrefOf } from '../route.ts';
import { FORM_WORDS, HAZARD_WORDS, KNOWN_WORDS, sayShelf } from '../words/shelf.ts';
import { Brushed } from './Brushed.tsx';
import { Facts } from './Facts.tsx';
import { FormIcon } from './FormIcon.tsx';
import { lineOf } from './order.ts';
import { amountWords, gradeWords } from './PaintLine.tsx';
import { Replaced } from './Replaced.tsx';
import { add, duplicate, isStocked, mark, newId, remove, shownStock } from './state.ts';
import { strokesOf } from './strokes.ts';
import { Trusted } from './Trusted.tsx';

const TINTS = [2, 10] as const;

/** One paint in full: brushed out, with its hazards, its actions and its data. */
export function Detail({ entry }: { entry: StockEntry }) {
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
          <FormIcon form={entry.form} />
          {[FORM_WORDS[entry.form], amountWords(entry) || sayShelf.notWeighed, gradeWords(entry)]
            .filter(Boolean)
            .join(' · ')}
        </p>
      )}
      {paint === null ? (
        <p>{sayShelf.curveNone}</p>
      ) : (
        <figure class="shelf-brushed">
          <Brushed
            strokes={strokes}
            name={entry.pigment}
            width={480}
            height={104}
            label={sayShelf.brushed(line.name, tints)}
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
      {paint !== null && <Trusted entry={entry} />}
      <Actions entry={entry} />
      <Hazard entry={entry} />
      <Facts line={line} />
      {isStocked.value && paint !== null && <Replaced entry={entry} paint={paint} />}
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
          {sayShelf.take}
        </button>
      </p>
    );
  const isWhite = stock.white === id;
  return (
    <>
      {isWhite && <p>{sayShelf.isWhite}</p>}
      <p class="shelf-actions">
        <a class="button" href={hrefOf('book', 'shelf', id, 'edit')}>
          {sayShelf.edit}
        </a>
        {!isWhite && markWhite(stock, id).ok && (
          <button type="button" onClick={() => void mark(id)}>
            {sayShelf.markWhite}
          </button>
        )}
        {isWhite && (
          <button type="button" class="quiet" onClick={() => void mark(null)}>
            {sayShelf.unmarkWhite}
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
          {sayShelf.duplicate}
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
          {sayShelf.remove}
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
  const { level, hazard, caution, dryRefused } = cautionOf(shownStock.value, entry);
  const facts = pigmentOf(entry.pigment);
  const known = facts && KNOWN_WORDS[facts.hazard.status];
  const grave = level === 'toxic' || level === 'very_toxic';
  return (
    <section class="shelf-caution" data-grave={grave ? 'yes' : 'no'}>
      <h3>
        {level !== 'low' && <CautionIcon size={22} />}
        {sayShelf.hazard}: {HAZARD_WORDS[level].toLowerCase()}
      </h3>
      {dryRefused && <p class="shelf-strong">{sayShelf.dryRefused}</p>}
      <p>{hazard}</p>
      {caution !== '' && <p>{caution}</p>}
      <p class="small">
        {known && `${known.charAt(0).toUpperCase()}${known.slice(1)}. `}
        {sayShelf.defers}
      </p>
    </section>
  );
}
