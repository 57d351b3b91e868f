/** The part of `navigator.storage` that the book uses. Browsers implement different subsets. */
interface Storage {
  persist?(): Promise<boolean>;
  persisted?(): Promise<boolean>;
  estimate?(): Promise<{ usage?: number; quota?: number }>;
}

/** How firmly the browser promises to keep the book; "unknown" when it does not say. */
export type StoragePromise = 'kept' | 'may be cleared' | 'unknown';

/**
 * Requests persistent storage from the browser. Call it after the first save, when the painter
 * knows what it protects: some browsers ask the user, others decide alone.
 */
export async function requestPersistence(storage: Storage | undefined): Promise<StoragePromise> {
  try {
    if ((await storage?.persisted?.()) === true) return 'kept';
    const answer = await storage?.persist?.();
    return answer === undefined ? 'unknown' : answer ? 'kept' : 'may be cleared';
  } catch {
    return 'unknown';
  }
}

/** Estimated bytes used and available; null when the browser does not say. */
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

/**
 * True when a reminder to make a copy is due: at least MANY entries changed since the last copy, or
 * any changed and the last copy is older than a week.
 * @param nowMs milliseconds since 1970
 */
export function copyIsDue(
  { last, changed }: { readonly last: string | null; readonly changed: number },
  nowMs: number,
): boolean {
  if (changed === 0) return false;
  if (changed >= MANY) return true;
  return last !== null && nowMs - Date.parse(last) > WEEK_MS;
}
