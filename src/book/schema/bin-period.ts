/** How long the bin keeps a deleted entry, milliseconds: 30 days. */
export const BIN_MS = 30 * 86_400_000;
