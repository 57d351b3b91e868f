import { type ComponentChildren, toChildArray } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/**
 * What stands below the first screenful comes once that is seen, each child in a task of its own.
 * @param room keeps the place of what has not come yet
 */
export function Soon({
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
