import { type ComponentChildren, toChildArray } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/**
 * Renders content below the first screenful after the first paint, each child in a task of its own.
 * @param room placeholder that reserves the space of the missing children
 */
export function DeferredContent({
  children,
  room,
}: {
  children: ComponentChildren;
  room?: ComponentChildren;
}) {
  const all = toChildArray(children);
  const [count, setCount] = useState(0);
  const isAll = count >= all.length;
  useEffect(() => {
    if (isAll) return;
    const timer = setTimeout(() => setCount(count + 1));
    return () => clearTimeout(timer);
  }, [count, isAll]);
  return (
    <>
      {all.slice(0, count)}
      {!isAll && room}
    </>
  );
}
