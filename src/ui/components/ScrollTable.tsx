import type { ComponentChildren } from 'preact';

/** A table in its own scroll container, which the keyboard can scroll too. */
export function ScrollTable({ label, children }: { label: string; children: ComponentChildren }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="mix-scroll" aria-label={label} tabIndex={0}>
      <table class="mix-table">{children}</table>
    </section>
  );
}
