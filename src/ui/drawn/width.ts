import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/**
 * The width that an element has on the page, in px, followed as it changes. Until it is known (and
 * where nothing can be measured) `first`. The element has no padding.
 */
export function useWidth<E extends HTMLElement>(first: number) {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(() => Math.min(first, columnWidth()));
  // Before anything is seen: what is drawn for one width and then for another costs twice.
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => {
      if (element.clientWidth > 0) setWidth(element.clientWidth);
    };
    measure();
    if (typeof ResizeObserver === 'undefined') return undefined;
    let frame = 0;
    // In a frame of its own: what is drawn anew while sizes are being told changes sizes again, which
    // WebKit reports as an error of the page.
    const watch = new ResizeObserver(() => {
      cancelAnimationFrame(frame);
      frame = requestAnimationFrame(measure);
    });
    watch.observe(element);
    return () => {
      cancelAnimationFrame(frame);
      watch.disconnect();
    };
  }, []);
  return { ref, width };
}

/** How wide the one column of a phone is, px: what is drawn for it first need not be drawn again. */
const columnWidth = (): number => globalThis.innerWidth - 2 * EDGE;
/** Room beside the column, px: --gap of the style sheet with letters of the usual size. */
const EDGE = 16;
