import { bookFaultWords } from '../../book/faults.ts';
import { go } from '../route.ts';
import { book, showError } from '../studio.ts';
import { draperyTexts } from '../words/drapery.ts';
import { schemeFromFormula } from './passages.ts';
import { replaceDrapery } from './saved.ts';

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
