import { clientsClaim } from 'workbox-core';
import {
  cleanupOutdatedCaches,
  createHandlerBoundToURL,
  precacheAndRoute,
} from 'workbox-precaching';
import { NavigationRoute, registerRoute } from 'workbox-routing';
import { SHARE_PATH, takeIn } from './share.ts';

declare const self: ServiceWorkerGlobalScope;

// The very first visit is served from here at once, so that it may end with no network.
clientsClaim();
precacheAndRoute(self.__WB_MANIFEST);
cleanupOutdatedCaches();
registerRoute(new NavigationRoute(createHandlerBoundToURL('index.html')));
// Photographs that another app hands over; only an installed app is offered them.
registerRoute(({ url }) => url.pathname === SHARE_PATH, takeIn, 'POST');

// A new version waits until the painter says so: it would take its files from under an open page.
self.addEventListener('message', (event) => {
  if ((event.data as { type?: string } | null)?.type === 'SKIP_WAITING') void self.skipWaiting();
});
