import { useEffect } from 'preact/hooks';
import { canUndo } from '../../state/harmony/current-harmony.ts';
import { undoAndGather } from '../../state/harmony/gather-again.ts';
import { sharedTexts } from '../../texts/shared-texts.ts';

/** Undo button for the screen, with Ctrl+Z or Cmd+Z. */
export function UndoButton() {
  useEffect(() => {
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
  if (!canUndo.value) return null;
  return (
    <button type="button" class="step-back" onClick={undoAndGather}>
      {sharedTexts.undo}
    </button>
  );
}

/** Leaves the keys to the browser's own undo in text fields. */
function onKey(event: KeyboardEvent): void {
  if (event.key !== 'z' || event.shiftKey || !(event.ctrlKey || event.metaKey)) return;
  const where = event.target;
  if (
    where instanceof HTMLElement &&
    where.matches('input[type=text], input[type=search], textarea')
  )
    return;
  event.preventDefault();
  undoAndGather();
}
