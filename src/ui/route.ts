import { computed, signal } from '@preact/signals';
import { arrived, leaving, named } from './trail.ts';

export const PLACES = ['walk', 'harmony', 'drapery', 'palette', 'book'] as const;
export type Place = (typeof PLACES)[number];

/** Where the painter is: a place, and what is open there. Lives in the address, so that back works. */
export interface Route {
  readonly place: Place;
  readonly open: string | null;
  /** What is open within that, outermost first. */
  readonly within: readonly string[];
  /** The address names no place that there is. */
  readonly lost?: true;
}

const LOST: Route = { place: 'walk', open: null, within: [], lost: true };

/** What an address names; its part after the # alone. */
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
    // Half a letter, as from an address that was cut off.
    return LOST;
  }
}

/** The address that was read last. */
let shown = '';
function read(): Route {
  shown = location.hash;
  return readRoute(shown);
}

export const route = signal<Route>(read());
export const place = computed(() => route.value.place);

function follow(): void {
  if (location.hash === shown) return;
  const before = route.value;
  const now = read();
  leaving();
  route.value = now;
  // What opens within a screen leaves the rest of it where it is.
  arrived(before.place !== now.place || before.open !== now.open);
}
addEventListener('hashchange', follow);

export const hrefOf = (to: Place, open?: string, ...within: readonly string[]): string =>
  `#/${[to, ...(open === undefined ? [] : [open, ...within]).map(encodeURIComponent)].join('/')}`;

export function go(to: Place, open?: string, ...within: readonly string[]): void {
  location.hash = hrefOf(to, open, ...within);
  // At once: what is left must not be shown changed for a moment.
  follow();
}

/** Opens something beside what is shown: a step to go back from, and nothing moves. */
export function openBeside(to: Place, open: string): void {
  leaving();
  named(hrefOf(to, open));
  route.value = read();
}

/** Names what is open otherwise than before, with no step for going back. */
export function rename(to: Place, open: string): void {
  history.replaceState(history.state, '', hrefOf(to, open));
  route.value = read();
}
