import type { ComponentChildren } from 'preact';
import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Rows rendered above and below the visible part. */
const BEYOND = 6;

/**
 * A virtualised list: renders only the rows near the visible part.
 * @param rem height of each row in rem, so that it scales with the font size
 */
export function VirtualList<T>({
  items,
  rem,
  label,
  keyOf,
  row,
}: {
  items: readonly T[];
  rem: number;
  label: string;
  keyOf: (item: T) => string;
  row: (item: T) => ComponentChildren;
}) {
  const list = useRef<HTMLUListElement>(null);
  const [[from, to], setRange] = useState<readonly [number, number]>([0, 16]);
  useLayoutEffect(() => {
    const look = () => {
      if (!list.current) return;
      const row = rem * Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
      const top = list.current.getBoundingClientRect().top;
      const first = Math.max(0, Math.floor(-top / row) - BEYOND);
      const last = Math.max(first, Math.ceil((innerHeight - top) / row) + BEYOND);
      setRange((now) => (now[0] === first && now[1] === last ? now : [first, last]));
    };
    look();
    addEventListener('scroll', look, { passive: true });
    addEventListener('resize', look);
    return () => {
      removeEventListener('scroll', look);
      removeEventListener('resize', look);
    };
  }, [rem, items]);
  const first = Math.min(from, Math.max(0, items.length - 1));
  return (
    <ul
      ref={list}
      class="long"
      aria-label={label}
      style={{ height: `${items.length * rem}rem`, paddingTop: `${first * rem}rem` }}
    >
      {items.slice(first, to).map((item, i) => (
        <li
          key={keyOf(item)}
          style={{ height: `${rem}rem` }}
          aria-setsize={items.length}
          aria-posinset={first + i + 1}
        >
          {row(item)}
        </li>
      ))}
    </ul>
  );
}
