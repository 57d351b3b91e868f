import { bodyOfStock } from '../../../book/schema/shelf.ts';
import { bookFaultWords } from '../../../messages/book-faults.ts';
import type { Day } from '../../../palette/day-plan.ts';
import { putBack, type StockWithdrawal, takeFrom } from '../../../palette/stock-supply.ts';
import type { Stock } from '../../../pigment/stock.ts';
import { ok } from '../../../result.ts';
import { dayPalettes, daySheet, sheetId } from '../../state/palette/day-entries.ts';
import { amountsOf } from '../../state/palette/palette-records.ts';
import { dayPlan, isStockCounted } from '../../state/palette/plan-job.ts';
import { saveDayEntry } from '../../state/palette/save-entry.ts';
import { shelfRemark } from '../../state/shelf-labels.ts';
import { bookReady, notice, showError, showNotice, storedShelf } from '../../state/studio.ts';
import { SHELF_ID } from '../../state/studio-shelf.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';

async function saveStock(stock: Stock): Promise<boolean> {
  const over = storedShelf.value;
  const into = await bookReady;
  if (!over || !into) return false;
  const put = await into.put({
    kind: 'shelf',
    id: SHELF_ID,
    over,
    body: bodyOfStock(stock, shelfRemark, over.body.note),
  });
  if (!put.ok) {
    showError(bookFaultWords(put.fault));
    return false;
  }
  storedShelf.value = put.value.entry;
  return true;
}

/**
 * Saves the day's sheet to the book.
 *
 * @param prepared time (ISO) and what was taken from the stock; null for a sheet that is only
 *   printed
 * @returns whether it was saved
 */
export async function saveSheet(
  day: Day,
  prepared: { readonly prepared: string; readonly taken: readonly StockWithdrawal[] } | null,
): Promise<boolean> {
  const over = daySheet.value;
  const put = await saveDayEntry(
    {
      kind: 'sheet',
      id: over?.id ?? sheetId(day.date),
      ...(over ? { over } : {}),
      body: {
        name: paletteTexts.sheetNamed(day.date),
        note: over?.body.note ?? '',
        date: day.date,
        palettes: dayPalettes.value.map(({ id }) => id),
        amounts: amountsOf(day),
        ...(prepared ?? {}),
      },
    },
    null,
  );
  return put !== null;
}

/**
 * Marks the day as prepared and takes its amounts from the stock, once. A failed save restores the
 * stock.
 */
export async function markPrepared(): Promise<void> {
  const planned = dayPlan.value;
  if (!planned || daySheet.value?.body.prepared) return;
  const { day } = planned;
  const stock = storedShelf.value?.body.stock;
  const after = stock && isStockCounted.value ? takeFrom(stock, day.takings) : null;
  if (after && !(await saveStock(after.stock))) return;
  const taken = after?.taken ?? [];
  if (!(await saveSheet(day, { prepared: new Date().toISOString(), taken }))) {
    if (after) await saveStock(stock!);
    return;
  }
  showNotice(
    taken.length > 0 ? paletteTexts.prepared : paletteTexts.preparedUncounted,
    async () => {
      await revertPrepared(false);
      return ok(null);
    },
  );
}

/**
 * Undoes the preparation: returns to the stock what the day took.
 *
 * @param said show a notice; false hides the current one
 */
export async function revertPrepared(said = true): Promise<void> {
  const over = daySheet.value;
  if (!over) return;
  const { prepared: _, taken, ...rest } = over.body;
  const stock = storedShelf.value?.body.stock;
  if (taken && taken.length > 0 && stock && !(await saveStock(putBack(stock, taken)))) return;
  await saveDayEntry({ kind: 'sheet', id: over.id, over, body: rest }, null);
  if (said) showNotice(paletteTexts.putBack);
  else notice.value = null;
}
