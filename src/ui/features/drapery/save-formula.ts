import { canonical } from '../../../book/schema/digest.ts';
import type { FormulaBody } from '../../../book/schema/drapery.ts';
import type { Entry } from '../../../book/schema/record.ts';
import type { Book } from '../../../book/store/open-book.ts';
import { type FormulaPassage, formulaOf } from '../../../drapery/formula.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import { clothRemarkWords } from '../../../messages/drapery-messages.ts';
import { joinWords } from '../../../wording.ts';
import { garments } from '../../state/drapery/cloth-results.ts';
import { scheme } from '../../state/drapery/drapery-scheme.ts';
import { currentDraperyName, savedDrapery } from '../../state/drapery/saved-drapery.ts';
import { today } from '../../state/locale-format.ts';
import { book, shelf, showError, showNotice } from '../../state/studio.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';

/** Most passages that the book's schema allows in one formula. */
const MOST_PASSAGES = 40;

/**
 * Saves the passages of all garments to the book as one formula, or as one for each garment when
 * they exceed {@link MOST_PASSAGES}. Does nothing until every garment is computed.
 */
export async function saveFormula(): Promise<void> {
  const here = book.value;
  const whole = garments.value.filter((one) => one !== null);
  if (!here || whole.length < scheme.value.garments.length) return;
  const each = whole.map((garment): readonly FormulaPassage[] =>
    formulaOf(garment, { name: '', note: '', subject: '' }, shelf.value).passages.map((passage) =>
      whole.length === 1 ? passage : { ...passage, name: `${garment.name}: ${passage.name}` },
    ),
  );
  const name = currentDraperyName();
  const parts =
    each.flat().length <= MOST_PASSAGES
      ? [{ name, passages: each.flat(), of: whole }]
      : whole.map((garment, i) => ({
          name: `${name}: ${garment.name}`,
          passages: each[i]!,
          of: [garment],
        }));
  for (const { name, passages, of } of parts) {
    const remarks = [...new Set(of.flatMap((garment) => garment.remarks.map(clothRemarkWords)))];
    const body: FormulaBody = {
      name,
      note: remarks.join(' '),
      date: today(),
      subject: draperyTexts.subject(joinWords([...new Set(of.map(({ stuff }) => stuff))])),
      from: savedDrapery.value?.id ?? scheme.value.harmony,
      passages,
    };
    await putFormula(here, body);
  }
}

/**
 * Saves a formula. Updates a saved one of the same name and origin; skips the write if nothing
 * changed.
 */
async function putFormula(here: Book, body: FormulaBody): Promise<void> {
  const before = await findSavedFormula(here, body);
  if (before && contentsOf(before.body) === contentsOf(body))
    return showNotice(draperyTexts.formulaThere(body.name));
  const put = await here.put({
    kind: 'formula',
    body,
    ...(before ? { id: before.id, over: before } : {}),
  });
  if (!put.ok) return showError(bookFaultWords(put.fault));
  showNotice(
    (before ? draperyTexts.formulaAnew : draperyTexts.formulaKept)(body.name),
    put.value.undo,
  );
}

/** Canonical contents without the date: a new date alone is no change. */
const contentsOf = (body: FormulaBody): string => canonical({ ...body, date: '' });

/** The saved formula with the same name and origin; null if there is none. */
async function findSavedFormula(
  here: Book,
  { name, from }: FormulaBody,
): Promise<Entry<'formula'> | null> {
  const all = await here.list();
  if (!all.ok) return null;
  for (const card of all.value.filter((one) => one.kind === 'formula' && one.name === name)) {
    const found = await here.get('formula', card.id);
    if (found.ok && found.value.body.from === from) return found.value;
  }
  return null;
}
