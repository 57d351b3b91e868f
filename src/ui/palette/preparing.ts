import { bookFaultWords } from '../../book/faults.ts';
import { bodyOfStock } from '../../book/shelf.ts';
import type { Day } from '../../palette/plan.ts';
import { putBack, type Taking, takeFrom } from '../../palette/supply.ts';
import type { Stock } from '../../pigment/stock.ts';
import { ok } from '../../result.ts';
import { SHELF_ID } from '../shelf/stocked.ts';
import { complain, notice, opening, stocked, tell } from '../studio.ts';
import { sayPalette } from '../words/palette.ts';
import { palettes, sheet, sheetId } from './days.ts';
import { amountsOf } from './kept.ts';
import { isCounted, plan } from './planning.ts';
import { save } from './save.ts';

async function putStock(stock: Stock): Promise<boolean> {
  const over = stocked.value;
  const into = await opening;
  if (!over || !into) return false;
  const put = await into.put({
    kind: 'shelf',
    id: SHELF_ID,
    over,
    body: bodyOfStock(stock, over.body.note),
  });
  if (!put.ok) {
    complain(bookFaultWords(put.fault));
    return false;
  }
  stocked.value = put.value.entry;
  return true;
}

/**
 * Saves the day's sheet to the book.
 *
 * @param prepared time (ISO) and what was taken from the stock; null for a sheet that is only
 *   printed
 * @returns whether it was saved
 */
export async function keepSheet(
  day: Day,
  prepared: { readonly prepared: string; readonly taken: readonly Taking[] } | null,
): Promise<boolean> {
  const over = sheet.value;
  const put = await save(
    {
      kind: 'sheet',
      id: over?.id ?? sheetId(day.date),
      ...(over ? { over } : {}),
      body: {
        name: sayPalette.sheetNamed(day.date),
        note: over?.body.note ?? '',
        date: day.date,
        palettes: palettes.value.map(({ id }) => id),
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
export async function prepare(): Promise<void> {
  const planned = plan.value;
  if (!planned || sheet.value?.body.prepared) return;
  const { day } = planned;
  const stock = stocked.value?.body.stock;
  const after = stock && isCounted.value ? takeFrom(stock, day.takings) : null;
  if (after && !(await putStock(after.stock))) return;
  const taken = after?.taken ?? [];
  if (!(await keepSheet(day, { prepared: new Date().toISOString(), taken }))) {
    if (after) await putStock(stock!);
    return;
  }
  tell(taken.length > 0 ? sayPalette.prepared : sayPalette.preparedUncounted, async () => {
    await unprepare(false);
    return ok(null);
  });
}

/**
 * Undoes the preparation: returns to the stock what the day took.
 *
 * @param said show a notice; false hides the current one
 */
export async function unprepare(said = true): Promise<void> {
  const over = sheet.value;
  if (!over) return;
  const { prepared: _, taken, ...rest } = over.body;
  const stock = stocked.value?.body.stock;
  if (taken && taken.length > 0 && stock && !(await putStock(putBack(stock, taken)))) return;
  await save({ kind: 'sheet', id: over.id, over, body: rest }, null);
  if (said) tell(sayPalette.putBack);
  else notice.value = null;
}
