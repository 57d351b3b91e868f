import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/**
 * The width that an element has on the page, in px, followed as it changes. Until it is known (and
 * where nothing can be measured) `first`.
 */
export function useWidth<E extends HTMLElement>(first: number) {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(first);
  // Before anything is seen: what is drawn for one width and then for another costs twice.
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return undefined;
    if (element.clientWidth > 0) setWidth(element.clientWidth);
    const watch = new ResizeObserver(([entry]) => {
      const seen = Math.round(entry?.contentRect.width ?? 0);
      if (seen > 0) setWidth(seen);
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return { ref, width };
}
