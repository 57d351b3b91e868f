import type { BookFault } from '../../book/schema/book-fault.ts';
import type { Entry } from '../../book/schema/record.ts';
import type { Book } from '../../book/store/open-book.ts';
import type { Surface } from '../../optics/surface.ts';
import { mixtureShelfOf } from '../../pigment/mixing-shelf.ts';
import type { Shelf } from '../../pigment/shelf.ts';
import { STARTER_SURFACE, starterShelf } from '../../pigment/starter-shelf.ts';
import type { Stock } from '../../pigment/stock.ts';
import { ok, type Result } from '../../result.ts';

/** Id of the one shelf in a book, the same on every device. */
export const SHELF_ID = 'studio-shelf';

/** A shelf without entries. */
export const EMPTY: Stock = {
  name: "the studio's shelf",
  surface: STARTER_SURFACE,
  white: null,
  entries: [],
  own: [],
};

/** Reads the shelf from a book; null when there is none or it was deleted. */
export async function readStoredShelf(
  book: Book,
): Promise<Result<Entry<'shelf'> | null, BookFault>> {
  const found = await book.get('shelf', SHELF_ID);
  if (found.ok) return ok(found.value.deletedAt === undefined ? found.value : null);
  return found.fault.code === 'not-found' ? ok(null) : found;
}

const starters = new Map<Surface['specular'], Shelf>();
/**
 * The starter shelf for either viewing of the surface. Each is one cached object, so that it can be
 * compared by identity.
 */
function starter(specular: Surface['specular']): Shelf {
  const known = starters.get(specular);
  if (known) return known;
  const made = { ...starterShelf(), surface: { ...STARTER_SURFACE, specular } };
  starters.set(specular, made);
  return made;
}

export const isStarter = (shelf: Shelf): boolean => [...starters.values()].includes(shelf);

/**
 * The shelf for the mixture search: that of the stock, or the starter shelf while the stock has
 * nothing to mix.
 */
export function mixingShelfOf(stock: Stock | null): Shelf {
  const shelf = stock && mixtureShelfOf(stock);
  return shelf && shelf.paints.length > 0 ? shelf : starter(stock?.surface.specular ?? 'included');
}
