import { useRef, useState } from 'preact/hooks';

/** A drag in progress, from one seat over others. */
interface DragState {
  /** `data-seat` of the dragged element, and of the one under the pointer. */
  readonly from: string;
  readonly over: string | null;
  /** Pointer position, px, relative to the element with the handlers. */
  readonly x: number;
  readonly y: number;
}

/** Pointer movement below which a touch stays a tap, px. */
const DRAG_THRESHOLD_PX = 6;

const seatAt = (target: Element | null): string | null =>
  target?.closest('[data-seat]')?.getAttribute('data-seat') ?? null;

/**
 * Drag and drop among elements with `data-seat`, by mouse, pen or finger. A finger drags only
 * elements with `touch-action: none`; elsewhere it scrolls the page.
 *
 * @param onDrop called when the pointer is released over another seat
 */
export function useSeatDrag(onDrop: (from: string, to: string) => void) {
  const [drag, setDrag] = useState<DragState | null>(null);
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
      if (!moved.current && Math.hypot(event.clientX - x, event.clientY - y) < DRAG_THRESHOLD_PX)
        return;
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
    // Suppress the click that follows a drag.
    onClickCapture: (event: MouseEvent) => {
      if (!moved.current) return;
      moved.current = false;
      event.stopPropagation();
      event.preventDefault();
    },
  };
}
