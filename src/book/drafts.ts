import { ok, type Result } from '../result.ts';
import type { BookFault } from './faults.ts';
import type { Kind } from './record.ts';
import type { Saving } from './saving.ts';
import type { Draft, Put } from './write.ts';

type Putting = <K extends Kind>(draft: Draft<K>) => Promise<Result<Put<K>, BookFault>>;

export interface Drafts {
  /** Saves soon; a further draft of the same entry takes its place. The line says "saving" from now. */
  later<K extends Kind>(draft: Draft<K> & { readonly id: string }): void;
  /** Saves all that waits, now. */
  flush(): Promise<Result<null, BookFault>>;
}

/**
 * What is being typed. Nothing waits longer than `waitMs`.
 */
export function createDrafts(put: Putting, saving: Saving, waitMs = 700): Drafts {
  interface Waiting {
    save: () => Promise<Result<unknown, BookFault>>;
    readonly timer: ReturnType<typeof setTimeout>;
    readonly mark: ReturnType<Saving['begin']>;
  }
  const waiting = new Map<string, Waiting>();

  async function save(id: string): Promise<Result<unknown, BookFault>> {
    const due = waiting.get(id);
    if (!due) return ok(null);
    waiting.delete(id);
    clearTimeout(due.timer);
    // The write's own mark begins before this one ends: the line never says "saved" between the two.
    const saved = due.save();
    due.mark.dropped();
    return saved;
  }

  return {
    later(draft) {
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

/** What of a page tells that it hides or closes: its document, its window. */
export interface Page {
  readonly document: {
    readonly visibilityState: string;
    addEventListener(type: 'visibilitychange', listener: () => void): void;
    removeEventListener(type: 'visibilitychange', listener: () => void): void;
  };
  addEventListener(type: 'pagehide', listener: () => void): void;
  removeEventListener(type: 'pagehide', listener: () => void): void;
}

/** Calls back whenever the page hides or closes: it may never run again. The answer ends that. */
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
