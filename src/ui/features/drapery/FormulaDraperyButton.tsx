import { bookFaultWords } from '../../../messages/book-faults.ts';

import { replaceDrapery } from '../../state/drapery/saved-drapery.ts';
import { go } from '../../state/route.ts';
import { book, showError } from '../../state/studio.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';
import { schemeFromFormula } from './scheme-from-formula.ts';

/** Button that starts a drapery from a saved formula. */
export function FormulaDraperyButton({ id, name }: { id: string; name: string }) {
  return (
    <button type="button" class="quiet" onClick={() => void take(id)}>
      {draperyTexts.beginFormula}
      <span class="unseen">: {name}</span>
    </button>
  );
}

async function take(id: string): Promise<void> {
  const found = await book.value?.get('formula', id);
  if (!found) return;
  if (!found.ok) return showError(bookFaultWords(found.fault));
  const scheme = schemeFromFormula(found.value.body);
  if (!scheme) return showError(draperyTexts.noPassages(found.value.body.name));
  replaceDrapery(scheme);
  go('drapery');
}
