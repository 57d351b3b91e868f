/** What of `navigator.storage` the book uses; browsers differ in what they have. */
export interface Storage {
  persist?(): Promise<boolean>;
  persisted?(): Promise<boolean>;
  estimate?(): Promise<{ usage?: number; quota?: number }>;
}

/** How far the browser promises to keep the book. "unknown" where it says nothing. */
export type Keeping = 'kept' | 'may be cleared' | 'unknown';

/**
 * Asks the browser to keep the book when room grows short. Asked after the first save, when there is
 * something to lose and the painter knows what for; some browsers ask the painter, others decide alone.
 */
export async function askToKeep(storage: Storage | undefined): Promise<Keeping> {
  try {
    if ((await storage?.persisted?.()) === true) return 'kept';
    const answer = await storage?.persist?.();
    return answer === undefined ? 'unknown' : answer ? 'kept' : 'may be cleared';
  } catch {
    return 'unknown';
  }
}

/** What the answer means; none of them says "safe", for none of them is. */
export const keepingWords = {
  kept: 'This browser keeps the book until you remove it yourself. A lost or broken device takes it along: make copies.',
  'may be cleared':
    'This browser may clear the book when room grows short, or when Kingcup was not opened for some days. Install Kingcup on this device, and make copies.',
  unknown:
    'This browser does not say how long it keeps the book. Make copies, and open Kingcup now and then.',
} as const satisfies Record<Keeping, string>;

/** Bytes used and bytes left, as the browser guesses; null where it does not say. */
export async function roomOf(
  storage: Storage | undefined,
): Promise<{ readonly used: number; readonly left: number } | null> {
  try {
    const { usage, quota } = (await storage?.estimate?.()) ?? {};
    if (usage === undefined || quota === undefined) return null;
    return { used: usage, left: Math.max(0, quota - usage) };
  } catch {
    return null;
  }
}

const MANY = 20;
const WEEK_MS = 7 * 86_400_000;

/** True when it is time to remind the painter of a copy: much has changed, or something has for a week. */
export function copyIsDue(
  { last, changed }: { readonly last: string | null; readonly changed: number },
  nowMs: number,
): boolean {
  if (changed === 0) return false;
  if (changed >= MANY) return true;
  return last !== null && nowMs - Date.parse(last) > WEEK_MS;
}
