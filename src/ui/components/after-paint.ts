/** Runs long work after the next paint, so that the page first responds to the input. */
export function afterPaint(work: () => void): void {
  requestAnimationFrame(() => setTimeout(work));
}
