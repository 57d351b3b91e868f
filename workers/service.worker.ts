import { clientsClaim } from 'workbox-core';
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { SHARE_PATH, takeIn } from './share-target.ts';

declare const self: ServiceWorkerGlobalScope;

// Control the page from the first visit on, so that the app already works offline.
clientsClaim();
precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));
// Photographs shared from another app; only an installed app is a share target.
registerRoute(({ url }) => url.pathname === SHARE_PATH, takeIn, 'POST');

// A new version waits for the painter's consent: activating it would replace files under an open
// page.
self.addEventListener('message', (event) => {
  if ((event.data as { type?: string } | null)?.type === 'SKIP_WAITING') void self.skipWaiting();
});
