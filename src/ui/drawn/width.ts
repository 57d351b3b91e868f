import { useEffect, useRef, useState } from 'preact/hooks';

/**
 * The width that an element has on the page, in px, followed as it changes. Until it is known (and
 * where nothing can be measured) `first`.
 */
export function useWidth<E extends HTMLElement>(first: number) {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    const element = ref.current;
    if (!element || typeof ResizeObserver === 'undefined') return undefined;
    const watch = new ResizeObserver(([entry]) => {
      const seen = Math.round(entry?.contentRect.width ?? 0);
      if (seen > 0) setWidth(seen);
    });
    watch.observe(element);
    return () => watch.disconnect();
  }, []);
  return { ref, width };
}
