/**
 * Scroll restoration: where each page of this visit was left, its scroll position and focused link,
 * restored on going back. The browser's own restoration runs too early, before the screen is
 * rendered.
 */
interface Left {
  readonly y: number;
  /** Selector of the focused link or field, and its index among the matches; null for none. */
  readonly focus: readonly [selector: string, nth: number] | null;
}

const STORE = 'kingcup trail';
/** Longest wait for a screen to render before restoring anyway, in milliseconds. */
const RENDER_TIMEOUT_MS = 2000;
/** After this time no screen moves the focus by itself, in milliseconds. */
const FOCUS_DELAY_MS = 180;

/** Current scroll position of the open page, in CSS pixels. */
let y = 0;
const trail = new Map<string, Left>(recalled());
let here = keyNow() ?? mark();
history.scrollRestoration = 'manual';

addEventListener('scroll', () => (y = scrollY), { passive: true });
addEventListener('pagehide', () => {
  recordPosition();
  try {
    sessionStorage.setItem(STORE, JSON.stringify([...trail].slice(-50)));
  } catch {
    // Without session storage a reloaded page starts at its top.
  }
});
// Restore a reloaded page.
if (trail.has(here))
  addEventListener('load', () => restoreWhenRendered(trail.get(here)!), { once: true });

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

/** Gives the current history entry an id. */
function mark(): string {
  const at = crypto.randomUUID();
  history.replaceState({ at }, '');
  return at;
}

/** Call before another page is shown: records the current position and focus. */
export function recordPosition(): void {
  trail.set(here, { y, focus: focused() });
}

/**
 * Call after another page is shown: restores its position, or scrolls to the top.
 * @param isOther false when only part of the page changed
 */
export function restorePosition(isOther: boolean): void {
  const known = keyNow();
  here = known ?? mark();
  const left = known === null ? undefined : trail.get(known);
  if (left) restoreWhenRendered(left);
  else if (isOther) scrollTo(0, 0);
  y = scrollY;
}

/** Adds a history entry without navigating. */
export function pushHistoryEntry(address: string): void {
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

/**
 * Waits until the page is long enough and its focused element exists, at most {@link RENDER_TIMEOUT_MS},
 * then restores both.
 */
function restoreWhenRendered({ y: to, focus }: Left): void {
  const at = here;
  const until = performance.now() + RENDER_TIMEOUT_MS;
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
    // Again after the screen's own effects, which focus its heading.
    setTimeout(place, FOCUS_DELAY_MS);
  };
  let touched = false;
  const touch = () => {
    touched = true;
  };
  for (const act of ['pointerdown', 'keydown', 'wheel'])
    addEventListener(act, touch, { once: true, passive: true });
  requestAnimationFrame(look);
}
