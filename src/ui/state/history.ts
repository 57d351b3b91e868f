import { computed, type ReadonlySignal, signal } from '@preact/signals';

/** Long enough for an evening, short enough for a phone's memory: a label map in a step is 200 kB. */
const MOST_STEPS = 100;

/** States that undo can bring back, the latest last. */
export interface UndoHistory<S> {
  readonly canUndo: ReadonlySignal<boolean>;
  /** What the next undo brings back; null where there is nothing. */
  readonly latest: ReadonlySignal<S | null>;
  /** To be called with the state before a change. */
  readonly push: (before: S) => void;
  /** Takes the latest state out; null where there is none. */
  readonly pop: () => S | null;
  readonly clear: () => void;
}

export function history<S>(): UndoHistory<S> {
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
