import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/**
 * Current width of an element, px, updated as it changes. The element must have no padding.
 *
 * @param first assumed width until it is measured, at most the width of a phone's column
 */
export function useWidth<E extends HTMLElement>(first: number) {
  const ref = useRef<E>(null);
  const [width, setWidth] = useState(() => Math.min(first, columnWidth()));
  // Measure before the first paint: drawing twice would cost twice.
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => {
      if (element.clientWidth > 0) setWidth(element.clientWidth);
    };
    measure();
    if (typeof ResizeObserver === 'undefined') return undefined;
    let frame = 0;
    // Measure in a new frame: redrawing inside the observer's callback changes sizes again, which
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

/** Width of a phone's single column, px: a first drawing at this width need not be redrawn. */
const columnWidth = (): number => globalThis.innerWidth - 2 * EDGE;
/** Space beside the column, px: --gap of the style sheet at the usual font size. */
const EDGE = 16;
