import { ok, type Result } from '../../result.ts';
import type { BookFault } from '../schema/book-fault.ts';
import type { Kind } from '../schema/record.ts';
import type { SaveTracker } from './save-state.ts';
import type { EntryDraft, Put } from './writer.ts';

type Putting = <K extends Kind>(draft: EntryDraft<K>) => Promise<Result<Put<K>, BookFault>>;

export interface DraftAutosave {
  /**
   * Saves the draft after the delay; a later draft of the same entry replaces it. The save line
   * shows "saving" at once.
   */
  saveSoon<K extends Kind>(draft: EntryDraft<K> & { readonly id: string }): void;
  /** Saves all waiting drafts now. */
  flush(): Promise<Result<null, BookFault>>;
}

/**
 * Autosave for text fields: saves the latest draft of each entry at most `waitMs` milliseconds
 * after its first change.
 */
export function createDraftAutosave(
  put: Putting,
  saving: SaveTracker,
  waitMs = 700,
): DraftAutosave {
  interface Waiting {
    save: () => Promise<Result<unknown, BookFault>>;
    readonly timer: ReturnType<typeof setTimeout>;
    readonly mark: ReturnType<SaveTracker['begin']>;
  }
  const waiting = new Map<string, Waiting>();

  async function save(id: string): Promise<Result<unknown, BookFault>> {
    const due = waiting.get(id);
    if (!due) return ok(null);
    waiting.delete(id);
    clearTimeout(due.timer);
    // The write begins its own mark before this one ends, so that the save line never shows "saved"
    // between the two.
    const saved = due.save();
    due.mark.dropped();
    return saved;
  }

  return {
    saveSoon(draft) {
      const held = waiting.get(draft.id);
      if (held) {
        held.save = () => put(draft);
        return;
      }
      waiting.set(draft.id, {
        save: () => put(draft),
        timer: setTimeout(() => void save(draft.id), waitMs),
        mark: saving.begin(draft.id),
      });
    },
    async flush() {
      const saved = await Promise.all([...waiting.keys()].map(save));
      return (saved.find((result) => !result.ok) as Result<null, BookFault>) ?? ok(null);
    },
  };
}

/** The parts of a window that report when the page hides or closes. */
interface Page {
  readonly document: {
    readonly visibilityState: string;
    addEventListener(type: 'visibilitychange', listener: () => void): void;
    removeEventListener(type: 'visibilitychange', listener: () => void): void;
  };
  addEventListener(type: 'pagehide', listener: () => void): void;
  removeEventListener(type: 'pagehide', listener: () => void): void;
}

/**
 * Calls `listener` whenever the page hides or closes; afterwards it may never run again.
 * @returns removes the listeners
 */
export function onHide(page: Page, listener: () => void): () => void {
  const onChange = () => {
    if (page.document.visibilityState === 'hidden') listener();
  };
  page.document.addEventListener('visibilitychange', onChange);
  page.addEventListener('pagehide', listener);
  return () => {
    page.document.removeEventListener('visibilitychange', onChange);
    page.removeEventListener('pagehide', listener);
  };
}
