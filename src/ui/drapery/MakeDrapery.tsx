import { go } from '../route.ts';
import { draperyTexts } from '../words/drapery.ts';
import { openHarmony } from './colours.ts';
import { replaceDrapery } from './saved.ts';
import { schemeFromColours } from './state.ts';

/** Button that starts a drapery from the open harmony. */
export function MakeDraperyButton({ main = false }: { main?: boolean }) {
  const open = openHarmony.value;
  if (!open) return null;
  return (
    <p>
      <button
        type="button"
        class={main ? 'main' : ''}
        onClick={() => {
          replaceDrapery(schemeFromColours(open.name, open.harmony, open.colours));
          go('drapery');
        }}
      >
        {draperyTexts.makeOf}
      </button>
    </p>
  );
}
