import { go } from '../route.ts';
import { say } from '../words/drapery.ts';
import { openHarmony } from './colours.ts';
import { begin } from './saved.ts';
import { schemeOf } from './state.ts';

/** Button that starts a drapery from the open harmony. */
export function MakeDrapery({ main = false }: { main?: boolean }) {
  const open = openHarmony.value;
  if (!open) return null;
  return (
    <p>
      <button
        type="button"
        class={main ? 'main' : ''}
        onClick={() => {
          begin(schemeOf(open.name, open.harmony, open.colours));
          go('drapery');
        }}
      >
        {say.makeOf}
      </button>
    </p>
  );
}
