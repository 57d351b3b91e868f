import { SHARED } from '../../../workers/share-target.ts';
import { nameFromFile } from '../features/walk/name-from-file.ts';
import { importPhotograph } from '../state/photograph-import.ts';

/**
 * Imports photographs shared from other apps, one after the other. Each stays in the cache until it
 * is saved or can never be.
 */
export async function importShared(): Promise<void> {
  if (!('caches' in globalThis) || !(await caches.has(SHARED))) return;
  const waiting = await caches.open(SHARED);
  for (const request of await waiting.keys()) {
    const answer = await waiting.match(request);
    const name = decodeURIComponent(answer?.headers.get('X-Name') ?? '');
    if (!answer || (await importPhotograph(await answer.blob(), nameFromFile(name))))
      await waiting.delete(request);
  }
}
