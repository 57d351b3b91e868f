import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { differenceWords } from '../../../colour/describe-colour.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { stockFaultWords } from '../../../messages/stock-faults.ts';
import type { Paint } from '../../../optics/opaque.ts';
import { masstone } from '../../../pigment/masstone.ts';
import type { StockEntry, StoredCurve } from '../../../pigment/stock.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { formatNumber } from '../../state/locale-format.ts';
import { go, hrefOf } from '../../state/route.ts';
import { cssColourOf } from '../../state/screen-colour.ts';
import { book, bookRevision, shelf, showError } from '../../state/studio.ts';
import { shelfTexts } from '../../texts/shelf-texts.ts';
import { CurveField, paintOfKept } from './CurveField.tsx';
import { type KeptRecipe, movedBy, recipesWith } from './recipes-in-book.ts';
import { edit, shownStock } from './stock-state.ts';

/**
 * Preview of replacing this lot: the recipes in the book that would change by more than CIEDE2000
 * 1.
 */
export function LotReplacement({ entry, paint }: { entry: StockEntry; paint: Paint }) {
  const isOpen = useSignal(false);
  return (
    <details
      class="shelf-replaced"
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>{shelfTexts.replaced}</summary>
      {isOpen.value && <Asked entry={entry} paint={paint} />}
    </details>
  );
}

function Asked({ entry, paint }: { entry: StockEntry; paint: Paint }) {
  const curve = useSignal<StoredCurve | null>(null);
  const lot = useSignal('');
  const replace = async () => {
    const { id, ...draft } = entry;
    const changed = await edit(id, {
      draft: { ...draft, lot: lot.value.trim() || entry.lot, curve: curve.value },
      own: null,
    });
    if (changed.ok) go('book', 'shelf', id);
    else if (changed.fault[0]) showError(stockFaultWords(changed.fault[0], formatNumber));
  };
  return (
    <div class="shelf-fields">
      <p>{shelfTexts.replacedAbout}</p>
      <CurveField
        name="replaced"
        legend={shelfTexts.colour}
        curve={curve}
        start={masstone(paint, shownStock.value.surface)}
        scattering={paint.S}
      />
      {curve.value && <Consequences entry={entry} paint={paintOfKept(curve.value)} />}
      {curve.value && (
        <>
          <label>
            {shelfTexts.newLot}
            <input
              type="text"
              maxLength={80}
              value={lot}
              onInput={(event) => {
                lot.value = event.currentTarget.value;
              }}
            />
          </label>
          <p>
            <button type="button" onClick={() => void replace()}>
              {shelfTexts.replaceIt}
            </button>
          </p>
        </>
      )}
    </div>
  );
}

function Consequences({ entry, paint }: { entry: StockEntry; paint: Paint }) {
  const recipes = useSignal<readonly KeptRecipe[] | null>(null);
  const pigment =
    shelf.value.paints.find((each) => each.pigment === `${entry.pigment}#${entry.id}`)?.pigment ??
    entry.pigment;
  const present = bookRevision.value;
  useEffect(() => {
    const here = book.peek();
    // Read again after every change of the book.
    if (!here || present < 0) return;
    void recipesWith(here, pigment).then((found) => {
      if (found.ok) recipes.value = found.value;
      else showError(bookFaultWords(found.fault));
    });
  }, [pigment, present]);
  if (recipes.value === null) return <p role="status">{shelfTexts.looking}</p>;
  const count = recipes.value.length;
  const moved = movedBy(recipes.value, shelf.value, pigment, paint);
  const sum =
    count === 0
      ? shelfTexts.noneUse
      : moved.length === 0
        ? shelfTexts.noneMove(count)
        : shelfTexts.someMove(moved.length, count);
  return (
    <div class="shelf-moved">
      <p role="status">{sum}</p>
      <ul>
        {moved.map(({ recipe, before, after, deltaE00 }) => (
          <li key={recipe.id}>
            <BrushedPaint
              name={recipe.id}
              strokes={[
                { hex: cssColourOf(before), words: shelfTexts.before },
                { hex: cssColourOf(after), words: shelfTexts.after },
              ]}
              label={`${recipe.name}: ${shelfTexts.before}, ${shelfTexts.after}`}
            />
            <span>
              <strong>{recipe.name}</strong>{' '}
              {recipe.harmony === null ? (
                shelfTexts.inEntry(recipe.entry)
              ) : (
                <a href={hrefOf('harmony', recipe.harmony)}>{shelfTexts.inEntry(recipe.entry)}</a>
              )}
              <br />
              {shelfTexts.movesBy(deltaE00)}: {shelfTexts.moveSeen[differenceWords(deltaE00)]}
            </span>
          </li>
        ))}
      </ul>
    </div>
  );
}
