import { computed, signal } from '@preact/signals';
import { pushHistoryEntry, recordPosition, restorePosition } from './scroll-restoration.ts';

export const PLACES = ['walk', 'harmony', 'drapery', 'palette', 'book'] as const;
export type Place = (typeof PLACES)[number];

/**
 * The current place and what is open there. It is encoded in the address, so that the back button
 * works.
 */
interface Route {
  readonly place: Place;
  readonly open: string | null;
  /** Further path segments, outermost first. */
  readonly within: readonly string[];
  /** Set when the address names no existing place. */
  readonly lost?: true;
}

const LOST: Route = { place: 'walk', open: null, within: [], lost: true };

/** Parses the fragment of an address, including its #. */
export function readRoute(hash: string): Route {
  const [place = '', ...rest] = hash.replace(/^#\/?/, '').split('/');
  if (place === '' && rest.length === 0) return { place: 'walk', open: null, within: [] };
  if (!(PLACES as readonly string[]).includes(place)) return LOST;
  try {
    const [open = '', ...within] = rest.map(decodeURIComponent);
    return {
      place: place as Place,
      open: open === '' ? null : open,
      within: within.filter((part) => part !== ''),
    };
  } catch {
    // An invalid escape sequence, as in a truncated address.
    return LOST;
  }
}

/** The fragment that was read last. */
let shown = '';
function read(): Route {
  shown = location.hash;
  return readRoute(shown);
}

export const route = signal<Route>(read());
export const place = computed(() => route.value.place);

function syncRoute(): void {
  if (location.hash === shown) return;
  const before = route.value;
  const now = read();
  recordPosition();
  route.value = now;
  // A change within a screen keeps the scroll position.
  restorePosition(before.place !== now.place || before.open !== now.open);
}
addEventListener('hashchange', syncRoute);

/** Address of a place and of what is open in it. */
export const hrefOf = (to: Place, open?: string, ...within: readonly string[]): string =>
  `#/${[to, ...(open === undefined ? [] : [open, ...within]).map(encodeURIComponent)].join('/')}`;

export function go(to: Place, open?: string, ...within: readonly string[]): void {
  location.hash = hrefOf(to, open, ...within);
  // Synchronously, so that the previous screen is not shown changed for a moment.
  syncRoute();
}

/** Opens something beside the current content: adds a history entry without scrolling. */
export function openBeside(to: Place, open: string): void {
  recordPosition();
  pushHistoryEntry(hrefOf(to, open));
  route.value = read();
}

/** Replaces the address of what is open, without a history entry. */
export function replaceAddress(to: Place, open: string): void {
  history.replaceState(history.state, '', hrefOf(to, open));
  route.value = read();
}
