import type { StockForm } from '../../../pigment/stock.ts';

const LINES: Record<StockForm, string> = {
  // Tube with its end rolled up.
  tube: 'M9.4 3.5h5.2v2.7H9.4ZM9 6.4h6c1.2 1.4 1.6 3 1.7 4.6l.5 7.7H6.8l.5-7.7C7.4 9.4 7.8 7.8 9 6.4ZM6 18.9h12v2H6Z',
  // Heap of paste on a slab, under the muller.
  paste:
    'M3 19.5h18M5 16.6c2.2-.2 2.6-1.6 4.4-1.8 1.9-.2 2.5 1 4.4.9 2-.1 2.8-.9 5.2 1M9 12.5h6l-.9-5.3c-.2-1-.9-1.7-2.1-1.7s-1.9.7-2.1 1.7Z',
  // Half-full jar with a cork.
  powder:
    'M8.5 3.5h7v2.8h-7ZM7.5 6.4h9l1.3 3v9.3c0 1-.7 1.8-1.7 1.8H7.9c-1 0-1.7-.8-1.7-1.8V9.4ZM6.4 14.6c2-1.3 3.6.6 5.5 0 2-.7 3.4-1.4 5.7-.3',
};

/** Icon of the paint's container; decorative, because its name is beside it. */
export const ContainerIcon = ({ form, size = 22 }: { form: StockForm; size?: number }) => (
  <svg
    class="form-icon"
    width={size}
    height={size}
    viewBox="0 0 24 24"
    fill="none"
    stroke="currentColor"
    stroke-width="1.6"
    stroke-linecap="round"
    stroke-linejoin="round"
    aria-hidden="true"
  >
    <path d={LINES[form]} />
  </svg>
);
