import type { RefObject } from 'preact';
import { useLayoutEffect, useState } from 'preact/hooks';

/**
 * Margin round the viewport: one viewport on each side, so that content is ready before it scrolls
 * into view.
 */
const MARGIN = '100%';

const callbacksOf = new Map<Element, Set<() => void>>();
let observer: IntersectionObserver | null = null;

function onIntersection(entries: readonly IntersectionObserverEntry[]): void {
  for (const { isIntersecting, target } of entries) {
    if (!isIntersecting) continue;
    const all = callbacksOf.get(target) ?? new Set();
    forget(target);
    // One task each: input is handled between them when many elements come near at once.
    for (const act of all) setTimeout(() => all.has(act) && act());
  }
}

function forget(element: Element): void {
  callbacksOf.delete(element);
  observer?.unobserve(element);
}

/**
 * Calls back once the element is in view or near it; immediately without an element or without
 * IntersectionObserver.
 *
 * @returns cancels the callback
 */
export function whenNear(element: Element | null, act: () => void): () => void {
  if (!element || typeof IntersectionObserver === 'undefined') {
    act();
    return () => {};
  }
  observer ??= new IntersectionObserver(onIntersection, { rootMargin: MARGIN });
  const all = callbacksOf.get(element) ?? new Set();
  callbacksOf.set(element, all.add(act));
  observer.observe(element);
  return () => {
    all.delete(act);
    if (all.size === 0 && callbacksOf.get(element) === all) forget(element);
  };
}

/** Whether the element has been in view or near it since it was mounted. */
export function useNear(ref: RefObject<Element | null>): boolean {
  const [isNear, setNear] = useState(false);
  useLayoutEffect(() => whenNear(ref.current, () => setNear(true)), []);
  return isNear;
}
