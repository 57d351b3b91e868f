import { signal } from '@preact/signals';
import { Workbox } from 'workbox-window';
import { settled } from './studio.ts';

/** Set when a new version waits for the painter's word. */
export const updateWaits = signal<(() => Promise<void>) | null>(null);
/** True once everything that the app needs is on the device. */
export const worksOffline = signal(false);

/** Starts the service worker and listens for a new version; it is never taken unasked. */
export function watchForUpdates(): void {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  const workbox = new Workbox('/service.worker.js');
  let asked = false;
  workbox.addEventListener('activated', () => {
    worksOffline.value = true;
  });
  workbox.addEventListener('waiting', () => {
    updateWaits.value = async () => {
      asked = true;
      await settled();
      workbox.messageSkipWaiting();
    };
  });
  // Only the window in which the painter agreed reloads; the others keep their work.
  workbox.addEventListener('controlling', () => {
    if (asked) location.reload();
  });
  void workbox.register().then(() => {
    if (navigator.serviceWorker.controller) worksOffline.value = true;
  });
}
