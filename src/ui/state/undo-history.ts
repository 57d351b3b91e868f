import { computed, type ReadonlySignal, signal } from '@preact/signals';

/**
 * Limit of undo steps: enough for an evening's work, and small enough for a phone's memory (a step
 * with a label map takes 200 kB).
 */
const MOST_STEPS = 100;

/** Undo history of states, latest last. */
interface UndoHistory<S> {
  readonly canUndo: ReadonlySignal<boolean>;
  /** The state that the next undo restores; null without one. */
  readonly latest: ReadonlySignal<S | null>;
  /** Call with the state before a change. Drops the oldest state beyond {@link MOST_STEPS}. */
  readonly push: (before: S) => void;
  /** Removes the latest state and returns it; null without one. */
  readonly pop: () => S | null;
  readonly clear: () => void;
}

/** Creates an empty undo history; states are kept by reference, so they must be immutable. */
export function undoHistory<S>(): UndoHistory<S> {
  const past = signal<readonly S[]>([]);
  const latest = computed(() => past.value.at(-1) ?? null);
  return {
    canUndo: computed(() => past.value.length > 0),
    latest,
    push: (before) => {
      past.value = [...past.value.slice(1 - MOST_STEPS), before];
    },
    pop: () => {
      const last = latest.value;
      past.value = past.value.slice(0, -1);
      return last;
    },
    clear: () => {
      past.value = [];
    },
  };
}
