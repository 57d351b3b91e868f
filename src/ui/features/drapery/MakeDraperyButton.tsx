import { schemeFromColours } from '../../state/drapery/drapery-scheme.ts';
import { openHarmony } from '../../state/drapery/open-harmony.ts';
import { replaceDrapery } from '../../state/drapery/saved-drapery.ts';
import { go } from '../../state/route.ts';
import { draperyTexts } from '../../texts/drapery-texts.ts';

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
