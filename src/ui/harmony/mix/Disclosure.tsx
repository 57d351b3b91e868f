import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';

/** Something that is there when it is asked for; what is inside is worked out only then. */
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
