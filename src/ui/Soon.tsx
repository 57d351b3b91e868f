import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

/** What stands below the first screenful comes in a task of its own, once that is seen. */
export function Soon({ children }: { children: ComponentChildren }) {
  const [isTime, setTime] = useState(false);
  useEffect(() => {
    const timer = setTimeout(() => setTime(true));
    return () => clearTimeout(timer);
  }, []);
  return isTime ? children : null;
}
