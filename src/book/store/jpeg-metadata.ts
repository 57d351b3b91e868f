const MARKER = 0xff;
const SOI = 0xd8;
const EOI = 0xd9;
const SOS = 0xda;
const APP0 = 0xe0;
const APP2 = 0xe2;
const APP14 = 0xee;
const LAST_APP = 0xef;
const COMMENT = 0xfe;

/**
 * Removes everything from a JPEG that identifies where, when and with which device it was taken:
 * EXIF, XMP, IPTC, comments, previews, and images after its end. Keeps what is needed to display
 * it: JFIF, the colour profile, Adobe's colour transform. Pixels are unchanged.
 *
 * @returns a new buffer, or null when the bytes are not a complete JPEG
 * @see ITU-T T.81 (1992), annex B, for the order of markers; ICC.1:2022 annex B for the profile's
 */
export function withoutMetadata(jpeg: ArrayBuffer): ArrayBuffer | null {
  const bytes = new Uint8Array(jpeg);
  if (bytes[0] !== MARKER || bytes[1] !== SOI) return null;
  const kept: Uint8Array[] = [bytes.subarray(0, 2)];
  let at = 2;
  for (;;) {
    if (bytes[at] !== MARKER) return null;
    // Any number of fill bytes may stand before a marker.
    while (bytes[at + 1] === MARKER) at++;
    const marker = bytes[at + 1];
    if (marker === undefined) return null;
    if (marker === EOI) {
      kept.push(bytes.subarray(at, at + 2));
      return joined(kept);
    }
    const length = ((bytes[at + 2] ?? 0) << 8) | (bytes[at + 3] ?? 0);
    let end = at + 2 + length;
    if (length < 2 || end > bytes.length) return null;
    if (marker === SOS) end = endOfScan(bytes, end);
    if (isNeeded(marker, bytes.subarray(at + 4, end))) kept.push(bytes.subarray(at, end));
    at = end;
  }
}

/**
 * Index of the first marker after compressed data. Stuffed bytes and restart markers belong to the
 * data.
 */
function endOfScan(bytes: Uint8Array, from: number): number {
  let at = from;
  while (at < bytes.length) {
    const next = bytes[at + 1]!;
    if (bytes[at] === MARKER && next !== 0 && next !== MARKER && (next < 0xd0 || next > 0xd7))
      break;
    at++;
  }
  return at;
}

function isNeeded(marker: number, content: Uint8Array): boolean {
  if (marker === COMMENT) return false;
  if (marker < APP0 || marker > LAST_APP) return true;
  if (marker === APP0) return startsWith(content, 'JFIF\0');
  if (marker === APP2) return startsWith(content, 'ICC_PROFILE\0');
  return marker === APP14 && startsWith(content, 'Adobe');
}

const startsWith = (content: Uint8Array, text: string): boolean =>
  [...text].every((letter, i) => content[i] === letter.charCodeAt(0));

function joined(pieces: readonly Uint8Array[]): ArrayBuffer {
  const out = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    out.set(piece, at);
    at += piece.length;
  }
  return out.buffer;
}
