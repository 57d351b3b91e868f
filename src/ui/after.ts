/** Does what takes long once the page has shown that it was asked. */
export function afterPaint(work: () => void): void {
  requestAnimationFrame(() => setTimeout(work));
}
