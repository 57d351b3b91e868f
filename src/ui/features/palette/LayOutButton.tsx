import { PaletteIcon } from '../../components/drawn/icons.tsx';
import { book } from '../../state/studio.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';

/**
 * Button that lays out an entry of the book on the palette: its mixtures become the piles of a new
 * passage.
 */
export function LayOutButton({ id, main = false }: { id: string; main?: boolean }) {
  if (book.value?.readOnly !== null) return null;
  return (
    <button
      type="button"
      class={main ? 'main' : ''}
      onClick={async () => (await import('./passage-actions.ts')).layOutEntry(id)}
    >
      <PaletteIcon size={20} />
      {sharedTexts.layOut}
    </button>
  );
}
