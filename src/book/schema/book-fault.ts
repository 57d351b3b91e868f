/** Faults of the book that the painter can act on. */
export type BookFault =
  | { readonly code: 'disk-full' }
  | { readonly code: 'newer-book' }
  | { readonly code: 'newer-window' }
  | { readonly code: 'older-window' }
  | { readonly code: 'book-removed' }
  | { readonly code: 'book-lost' }
  | { readonly code: 'no-storage' }
  | { readonly code: 'lost-connection' }
  | { readonly code: 'not-written'; readonly detail: string }
  | { readonly code: 'not-opened'; readonly detail: string }
  | { readonly code: 'not-read'; readonly detail: string }
  | { readonly code: 'not-found' }
  | { readonly code: 'damaged' }
  | { readonly code: 'stopped' }
  | { readonly code: 'not-a-photograph' }
  | { readonly code: 'not-a-copy' }
  | { readonly code: 'copy-damaged'; readonly where: string }
  | { readonly code: 'copy-newer' }
  | { readonly code: 'copy-too-large' }
  | { readonly code: 'book-too-large' }
  | { readonly code: 'copy-unsound'; readonly where: readonly string[] }
  | { readonly code: 'bad-record'; readonly where: string }
  | { readonly code: 'newer-record' };

/**
 * Maps a browser's error to a fault. Names and messages differ between browsers, so both are
 * examined.
 * @param otherwise the code when nothing more specific matches
 */
export function faultOf(
  error: unknown,
  otherwise: 'not-written' | 'not-read' | 'not-opened',
): BookFault {
  const { name, message } = nameOf(error);
  if (/quota/i.test(name) || /quota|full disk|disk is full|no space/i.test(message))
    return { code: 'disk-full' };
  if (name === 'VersionError') return { code: 'newer-book' };
  // In private windows some browsers throw InvalidStateError; others have no IndexedDB at all.
  if (otherwise === 'not-opened' && /^(InvalidState|Reference)Error$/.test(name))
    return { code: 'no-storage' };
  if (isDead(error)) return { code: 'lost-connection' };
  if (name === 'SecurityError') return { code: 'no-storage' };
  return { code: otherwise, detail: `${name}: ${message}` };
}

/** True for errors of a connection that the browser has dropped; a new connection may work. */
export function isDead(error: unknown): boolean {
  const { name, message } = nameOf(error);
  return (
    name === 'InvalidStateError' ||
    (name === 'UnknownError' && /connection|server lost|terminated/i.test(message))
  );
}

function nameOf(error: unknown): { name: string; message: string } {
  return error instanceof Error || error instanceof DOMException
    ? { name: error.name, message: error.message }
    : { name: 'Error', message: String(error) };
}
