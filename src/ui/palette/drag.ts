import { useRef, useState } from 'preact/hooks';

/** Something that is being dragged over others of its kind. */
export interface Drag {
  /** Value of `data-seat` of what is dragged, and of what lies under the pointer. */
  readonly from: string;
  readonly over: string | null;
  /** Of the pointer, px within what hears it. */
  readonly x: number;
  readonly y: number;
}

/** Nearer than this to where it began, a touch is a touch. */
const STILL_PX = 6;

const seatAt = (target: Element | null): string | null =>
  target?.closest('[data-seat]')?.getAttribute('data-seat') ?? null;

/**
 * Dragging among elements that carry `data-seat`, by mouse, pen or finger. A finger drags only what has
 * `touch-action: none`; elsewhere it scrolls the page.
 * @param onDrop where it was let go, on another seat
 */
export function useDrag(onDrop: (from: string, to: string) => void) {
  const [drag, setDrag] = useState<Drag | null>(null);
  const held = useRef<{ from: string; x: number; y: number } | null>(null);
  const moved = useRef(false);

  const under = (event: PointerEvent): string | null => {
    const there = document.elementFromPoint(event.clientX, event.clientY);
    return (event.currentTarget as Element).contains(there) ? seatAt(there) : null;
  };
  const end = () => {
    held.current = null;
    setDrag(null);
  };
  return {
    drag,
    onPointerDown: (event: PointerEvent) => {
      const from = seatAt(event.target as Element);
      moved.current = false;
      if (from !== null && event.button === 0 && event.isPrimary)
        held.current = { from, x: event.clientX, y: event.clientY };
    },
    onPointerMove: (event: PointerEvent) => {
      if (held.current === null) return;
      const { from, x, y } = held.current;
      if (!moved.current && Math.hypot(event.clientX - x, event.clientY - y) < STILL_PX) return;
      const area = event.currentTarget as HTMLElement;
      if (!moved.current) area.setPointerCapture(event.pointerId);
      moved.current = true;
      const box = area.getBoundingClientRect();
      setDrag({
        from,
        over: under(event),
        x: event.clientX - box.left,
        y: event.clientY - box.top,
      });
    },
    onPointerUp: (event: PointerEvent) => {
      const from = held.current?.from;
      const to = moved.current ? under(event) : null;
      end();
      if (from !== undefined && to !== null && to !== from) onDrop(from, to);
    },
    onPointerCancel: end,
    // What was dragged was not touched.
    onClickCapture: (event: MouseEvent) => {
      if (!moved.current) return;
      moved.current = false;
      event.stopPropagation();
      event.preventDefault();
    },
  };
}
