import { computed, signal } from '@preact/signals';

export const PLACES = ['walk', 'harmony', 'drapery', 'palette', 'book'] as const;
export type Place = (typeof PLACES)[number];

/** Where the painter is: a place, and what is open there. Lives in the address, so that back works. */
export interface Route {
  readonly place: Place;
  readonly open: string | null;
  /** What is open within that, outermost first. */
  readonly within: readonly string[];
}

const read = (): Route => {
  const [place = '', open = '', ...within] = location.hash.replace(/^#\/?/, '').split('/');
  return (PLACES as readonly string[]).includes(place)
    ? {
        place: place as Place,
        open: open === '' ? null : decodeURIComponent(open),
        within: within.filter((part) => part !== '').map(decodeURIComponent),
      }
    : { place: 'walk', open: null, within: [] };
};

export const route = signal<Route>(read());
export const place = computed(() => route.value.place);

addEventListener('hashchange', () => {
  const before = route.value;
  route.value = read();
  // What opens within a screen leaves the rest of it where it is.
  if (before.place !== route.value.place || before.open !== route.value.open) scrollTo(0, 0);
});

export const hrefOf = (to: Place, open?: string, ...within: readonly string[]): string =>
  `#/${[to, ...(open === undefined ? [] : [open, ...within]).map(encodeURIComponent)].join('/')}`;

export function go(to: Place, open?: string, ...within: readonly string[]): void {
  location.hash = hrefOf(to, open, ...within);
}

/** Names what is open otherwise than before, with no step for going back. */
export function rename(to: Place, open: string): void {
  history.replaceState(null, '', hrefOf(to, open));
  route.value = read();
}
