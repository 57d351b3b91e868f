/**
 * Where each page of this visit was left: how far down, and on which link. Going back leads there again.
 * The browser's own memory cannot: a screen comes later than its address.
 */
interface Left {
  readonly y: number;
  /** Finds the link or field that had the focus, and which of those it finds; null for none. */
  readonly focus: readonly [selector: string, nth: number] | null;
}

const STORE = 'kingcup trail';
/** Longest that a screen may take to come before it stays where it is, in milliseconds. */
const PATIENCE = 2000;
/** After so long no screen takes the focus any more by itself, in milliseconds. */
const SETTLED = 180;

/** How far down the page that is open now has been moved. */
let y = 0;
const trail = new Map<string, Left>(recalled());
let here = keyNow() ?? mark();
history.scrollRestoration = 'manual';

addEventListener('scroll', () => (y = scrollY), { passive: true });
addEventListener('pagehide', () => {
  leaving();
  try {
    sessionStorage.setItem(STORE, JSON.stringify([...trail].slice(-50)));
  } catch {
    // A browser that keeps nothing: after a reload the page begins at its top.
  }
});
// A page that was reloaded is where it was.
if (trail.has(here)) addEventListener('load', () => comeBack(trail.get(here)!), { once: true });

function recalled(): [string, Left][] {
  try {
    const read: unknown = JSON.parse(sessionStorage.getItem(STORE) ?? '[]');
    return Array.isArray(read) ? read : [];
  } catch {
    return [];
  }
}

function keyNow(): string | null {
  const state = history.state as { readonly at?: unknown } | null;
  return typeof state?.at === 'string' ? state.at : null;
}

/** Gives the page that is open now a name in the history. */
function mark(): string {
  const at = crypto.randomUUID();
  history.replaceState({ at }, '');
  return at;
}

/** To be called before another page is shown. */
export function leaving(): void {
  trail.set(here, { y, focus: focused() });
}

/** To be called once another page is shown. @param isOther it is not only more of the same */
export function arrived(isOther: boolean): void {
  const known = keyNow();
  here = known ?? mark();
  const left = known === null ? undefined : trail.get(known);
  if (left) comeBack(left);
  else if (isOther) scrollTo(0, 0);
  y = scrollY;
}

/** A new page in the history that the browser does not go to by itself. */
export function named(address: string): void {
  here = crypto.randomUUID();
  history.pushState({ at: here }, '', address);
}

function focused(): Left['focus'] {
  const on = document.activeElement;
  if (!on || !document.getElementById('contents')?.contains(on)) return null;
  const href = on.getAttribute('href');
  const selector = on.id ? `#${CSS.escape(on.id)}` : href && `main a[href="${CSS.escape(href)}"]`;
  if (!selector) return null;
  return [selector, [...document.querySelectorAll(selector)].indexOf(on)];
}

/** Waits for the screen to be as long as it was, or as it will be; then moves to where it was left. */
function comeBack({ y: to, focus }: Left): void {
  const at = here;
  const until = performance.now() + PATIENCE;
  const look = () => {
    if (here !== at) return;
    const on = focus && document.querySelectorAll<HTMLElement>(focus[0])[focus[1]];
    const isThere = document.documentElement.scrollHeight >= to + innerHeight - 1;
    const isLate = performance.now() > until;
    if (!((isThere && (!focus || on)) || isLate)) {
      requestAnimationFrame(look);
      return;
    }
    const place = () => {
      if (here !== at || touched) return;
      scrollTo(0, to);
      on?.focus({ preventScroll: true });
    };
    place();
    // Once more after the screen's own effects, which take the focus to its heading.
    setTimeout(place, SETTLED);
  };
  let touched = false;
  const touch = () => {
    touched = true;
  };
  for (const act of ['pointerdown', 'keydown', 'wheel'])
    addEventListener(act, touch, { once: true, passive: true });
  requestAnimationFrame(look);
}
