import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

/** A disclosure widget. Its children are a function, called only while it is open. */
export function Disclosure({
  heading,
  class: className,
  children,
}: {
  heading: string;
  class?: string;
  children: () => ComponentChildren;
}) {
  const isOpen = useSignal(false);
  return (
    <details
      class={className}
      open={isOpen.value}
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>{heading}</summary>
      {isOpen.value && children()}
    </details>
  );
}
