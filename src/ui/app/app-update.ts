import { signal } from '@preact/signals';
import { Workbox } from 'workbox-window';
import { flushAll } from '../state/studio.ts';

/** Activates a waiting new version; null when there is none. */
export const activateUpdate = signal<(() => Promise<void>) | null>(null);

/**
 * Registers the service worker and watches for a new version, which is activated only on request.
 */
export function watchForUpdates(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  const workbox = new Workbox('/service.worker.js');
  let asked = false;
  workbox.addEventListener('waiting', () => {
    activateUpdate.value = async () => {
      asked = true;
      await flushAll();
      workbox.messageSkipWaiting();
    };
  });
  // Reload only the window in which the painter agreed; the others keep their work.
  workbox.addEventListener('controlling', () => {
    if (asked) location.reload();
  });
  void workbox.register();
}
