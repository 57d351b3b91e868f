import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/** As far round the window as one more window: what is scrolled to is there before it is seen. */
const MARGIN = '100%';

const acts = new Map<Element, Set<() => void>>();
let observer: IntersectionObserver | null = null;

function seen(entries: readonly IntersectionObserverEntry[]): void {
  for (const { isIntersecting, target } of entries) {
    if (!isIntersecting) continue;
    const all = acts.get(target) ?? new Set();
    forget(target);
    // Much may come near at once: what is touched is answered between.
    for (const act of all) setTimeout(() => all.has(act) && act());
  }
}

function forget(element: Element): void {
  acts.delete(element);
  observer?.unobserve(element);
}

/**
 * Calls back once the element is in view or near it; at once where nothing tells.
 * @returns takes it back
 */
export function whenNear(element: Element | null, act: () => void): () => void {
  if (!element || typeof IntersectionObserver === 'undefined') {
    act();
    return () => {};
  }
  observer ??= new IntersectionObserver(seen, { rootMargin: MARGIN });
  const all = acts.get(element) ?? new Set();
  acts.set(element, all.add(act));
  observer.observe(element);
  return () => {
    all.delete(act);
    if (all.size === 0 && acts.get(element) === all) forget(element);
  };
}

/** Whether the element has been in view or near it since it is there. */
export function useNear(ref: RefObject<Element | null>): boolean {
  const [isNear, setNear] = useState(false);
  useLayoutEffect(() => whenNear(ref.current, () => setNear(true)), []);
  return isNear;
}
