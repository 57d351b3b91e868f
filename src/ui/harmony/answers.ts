import { signal } from '@preact/signals';
import type { Lab } from '../../colour/lab.ts';
import { mixFaultWords } from '../../mixture/faults.ts';
import type { Answer } from '../../mixture/mixture.ts';
import { findMixtures, isStop } from '../jobs.ts';
import { complain, shelf } from '../studio.ts';

const nameOf = (lab: Lab): string => lab.map((v) => v.toFixed(4)).join(' ');

/** Answers found so far on the present shelf, by target. */
const found = signal<ReadonlyMap<string, Answer>>(new Map());
/** How much of the work under way is done, 0…1; null when there is none. */
export const mixing = signal<number | null>(null);

/** The answer for a target, or null while it is not known yet. */
export const answerOf = (lab: Lab): Answer | null => found.value.get(nameOf(lab)) ?? null;

/** Answers that a record brought along, so that opening it searches for nothing. */
export function remember(answers: readonly Answer[]): void {
  const next = new Map(found.peek());
  for (const answer of answers) next.set(nameOf(answer.target), answer);
  found.value = next;
}

let controller: AbortController | null = null;
let wanted = '';

/**
 * Sees to it that these targets will be answered, the first `first` of them before the others. What was
 * wanted before and is no longer is stopped.
 */
export function wantAnswers(targets: readonly Lab[], first: number): void {
  const missing = (labs: readonly Lab[]) => labs.filter((lab) => !found.peek().has(nameOf(lab)));
  if (missing(targets).length === 0) return;
  const all = targets.map(nameOf).join();
  if (controller && all === wanted) return;
  wanted = all;
  controller?.abort();
  const mine = new AbortController();
  controller = mine;
  void (async () => {
    try {
      for (const group of [targets.slice(0, first), targets.slice(first)])
        await search(missing(group), mine.signal);
    } catch (error) {
      if (!isStop(error)) complain((error as Error).message);
    } finally {
      if (controller === mine) {
        controller = null;
        mixing.value = null;
      }
    }
  })();
}

export const stopMixing = (): void => controller?.abort();

async function search(targets: readonly Lab[], signal: AbortSignal): Promise<void> {
  if (targets.length === 0) return;
  mixing.value = 0;
  const result = await findMixtures(
    { targets, shelf: shelf.peek(), options: {} },
    {
      signal,
      onNews: (done) => {
        mixing.value = done;
      },
    },
  );
  if (!result.ok) return complain(mixFaultWords(result.fault));
  remember(result.value);
}
