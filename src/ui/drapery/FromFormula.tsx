import { bookFaultWords } from '../../book/faults.ts';
import { go } from '../route.ts';
import { book, complain } from '../studio.ts';
import { say } from '../words/drapery.ts';
import { schemeOfFormula } from './passages.ts';
import { begin } from './saved.ts';

/** Button that starts a drapery from a saved formula. */
export function FromFormula({ id, name }: { id: string; name: string }) {
  return (
    <button type="button" class="quiet" onClick={() => void take(id)}>
      {say.beginFormula}
      <span class="unseen">: {name}</span>
    </button>
  );
}

async function take(id: string): Promise<void> {
  const found = await book.value?.get('formula', id);
  if (!found) return;
  if (!found.ok) return complain(bookFaultWords(found.fault));
  const scheme = schemeOfFormula(found.value.body);
  if (!scheme) return complain(say.noPassages(found.value.body.name));
  begin(scheme);
  go('drapery');
}
