import { computed, signal } from '@preact/signals';

export const PLACES = ['walk', 'harmony', 'drapery', 'palette', 'book'] as const;
export type Place = (typeof PLACES)[number];

/** Where the painter is: a place, and what is open there. Lives in the address, so that back works. */
export interface Route {
  readonly place: Place;
  readonly open: string | null;
}

const read = (): Route => {
  const [place = '', open = ''] = location.hash.replace(/^#\/?/, '').split('/');
  return (PLACES as readonly string[]).includes(place)
    ? { place: place as Place, open: open === '' ? null : decodeURIComponent(open) }
    : { place: 'walk', open: null };
};

export const route = signal<Route>(read());
export const place = computed(() => route.value.place);

addEventListener('hashchange', () => {
  route.value = read();
  scrollTo(0, 0);
});

export const hrefOf = (to: Place, open?: string): string =>
  open === undefined ? `#/${to}` : `#/${to}/${encodeURIComponent(open)}`;

export function go(to: Place, open?: string): void {
  location.hash = hrefOf(to, open);
}
