import { fail, ok, type Result } from '../result.ts';
import { ascii, u16, u32 } from './bytes.ts';
import { isWide } from './icc-profile.ts';

type FileKind = 'jpeg' | 'png' | 'webp' | 'avif' | 'tiff' | 'gif';

/** What to mind in a photograph that was read. */
export type PhotoRemark =
  /** The file holds several pictures; the first was read. */
  | { readonly code: 'several-pictures' }
  /** Larger than {@link MAX_DECODED_PIXELS}; a smaller copy was read. */
  | { readonly code: 'smaller-copy'; readonly megapixels: number }
  /** The browser reads no colours beyond sRGB. */
  | { readonly code: 'srgb-only' }
  /** The browser adds noise to the pixels that a page reads. */
  | { readonly code: 'perturbed' };

/** Why a photograph cannot be used. */
export type PhotoFault =
  | { readonly code: 'empty' }
  | { readonly code: 'not-an-image' }
  | { readonly code: 'truncated' }
  | { readonly code: 'heic' }
  | { readonly code: 'kind-not-here'; readonly kind: FileKind }
  | { readonly code: 'too-large'; readonly megapixels: number }
  | { readonly code: 'not-readable'; readonly why: string }
  | { readonly code: 'missing'; readonly why: string };

/**
 * Pixel limits: photographs above the first are refused; above the second they may be downscaled
 * while decoding (workers/photo.ts).
 */
export const MAX_PIXELS = 200e6;
export const MAX_DECODED_PIXELS = 16e6;

const HEIC_BRANDS = ['heic', 'heix', 'hevc', 'hevx', 'heim', 'heis', 'mif1', 'msf1'];

/** Properties of an image file, read from its bytes before decoding. */
interface FileFacts {
  readonly kind: FileKind;
  /** The embedded colour profile exceeds sRGB: read the pixels as Display P3. */
  readonly wide: boolean;
  /** The file has several frames; only the first is read. */
  readonly animated: boolean;
}

/**
 * Inspects a file's bytes: format, completeness, gamut and animation.
 * Formats: ITU-T T.81 (JPEG), ISO/IEC 15948 (PNG), RFC 9649 (WebP), ISO/IEC 14496-12 (AVIF and HEIC
 * boxes), TIFF 6.0.
 * @param inflate decompresses a PNG's deflated profile; without it such a profile counts as sRGB
 * @returns a fault for an empty, truncated, HEIC or unknown file
 */
export function inspectFile(
  bytes: Uint8Array,
  inflate?: (packed: Uint8Array) => Uint8Array,
): Result<FileFacts, PhotoFault> {
  if (bytes.length === 0) return fail({ code: 'empty' });
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpeg(bytes);
  if (bytes.length >= 8 && u32(bytes, 0) === 0x89504e47) return png(bytes, inflate);
  if (ascii(bytes, 0, 4) === 'RIFF' && ascii(bytes, 8, 12) === 'WEBP') return webp(bytes);
  if (ascii(bytes, 0, 4) === 'GIF8') {
    if (bytes.at(-1) !== 0x3b) return fail({ code: 'truncated' });
    return ok({ kind: 'gif', wide: false, animated: hasBytes(bytes, 'NETSCAPE2.0') });
  }
  if (ascii(bytes, 4, 8) === 'ftyp') return inspectIsoBoxes(bytes);
  const order = ascii(bytes, 0, 4);
  if (order === 'II*\0' || order === 'MM\0*')
    return ok({ kind: 'tiff', wide: false, animated: false });
  return fail({ code: 'not-an-image' });
}

function jpeg(bytes: Uint8Array): Result<FileFacts, PhotoFault> {
  const profile: Uint8Array[] = [];
  let i = 2;
  while (i + 4 <= bytes.length) {
    if (bytes[i] !== 0xff) return fail({ code: 'truncated' });
    const marker = bytes[i + 1]!;
    if (marker === 0xff) {
      i++;
      continue;
    }
    const length = u16(bytes, i + 2);
    if (marker === 0xda) {
      if (!isEnded(bytes, i + 2 + length)) return fail({ code: 'truncated' });
      return ok({ kind: 'jpeg', wide: isWide(join(profile)), animated: false });
    }
    if (marker === 0xe2 && ascii(bytes, i + 4, i + 15) === 'ICC_PROFILE')
      profile.push(bytes.subarray(i + 18, i + 2 + length));
    i += 2 + length;
  }
  return fail({ code: 'truncated' });
}

/**
 * Whether the entropy-coded data has its end marker. In it, 0xff is always followed by 0 or a
 * restart marker, so 0xffd9 marks the end. Most files end there, so the search runs backwards.
 */
function isEnded(bytes: Uint8Array, from: number): boolean {
  for (let i = bytes.length - 2; i >= from; i--)
    if (bytes[i] === 0xff && bytes[i + 1] === 0xd9) return true;
  return false;
}

function png(
  bytes: Uint8Array,
  inflate: ((packed: Uint8Array) => Uint8Array) | undefined,
): Result<FileFacts, PhotoFault> {
  let wide = false;
  let animated = false;
  for (let i = 8; i + 12 <= bytes.length; ) {
    const length = u32(bytes, i);
    const type = ascii(bytes, i + 4, i + 8);
    if (type === 'IEND') return ok({ kind: 'png', wide, animated });
    if (type === 'acTL') animated = true;
    // cICP colour primaries: 12 is Display P3, 9 is ITU-R BT.2020.
    if (type === 'cICP') wide ||= bytes[i + 8] === 12 || bytes[i + 8] === 9;
    if (type === 'iCCP' && inflate) {
      const body = bytes.subarray(i + 8, i + 8 + length);
      const name = body.indexOf(0);
      if (name > 0) wide ||= isWide(unpacked(body.subarray(name + 2), inflate));
    }
    i += 12 + length;
  }
  return fail({ code: 'truncated' });
}

/** Decompresses a profile; a corrupt one counts as absent. */
function unpacked(packed: Uint8Array, inflate: (packed: Uint8Array) => Uint8Array): Uint8Array {
  try {
    return inflate(packed);
  } catch {
    return new Uint8Array(0);
  }
}

function webp(bytes: Uint8Array): Result<FileFacts, PhotoFault> {
  const le32 = (i: number) =>
    (bytes[i]! | (bytes[i + 1]! << 8) | (bytes[i + 2]! << 16) | (bytes[i + 3]! << 24)) >>> 0;
  const end = le32(4) + 8;
  if (end > bytes.length) return fail({ code: 'truncated' });
  let wide = false;
  let animated = false;
  for (let i = 12; i + 8 <= end; ) {
    const length = le32(i + 4);
    const type = ascii(bytes, i, i + 4);
    if (type === 'ANIM') animated = true;
    if (type === 'ICCP') wide = isWide(bytes.subarray(i + 8, i + 8 + length));
    i += 8 + length + (length & 1);
  }
  return ok({ kind: 'webp', wide, animated });
}

function inspectIsoBoxes(bytes: Uint8Array): Result<FileFacts, PhotoFault> {
  const first = u32(bytes, 0);
  const brands: string[] = [ascii(bytes, 8, 12)];
  for (let i = 16; i + 4 <= Math.min(first, bytes.length); i += 4)
    brands.push(ascii(bytes, i, i + 4));
  const avif = brands.includes('avif') || brands.includes('avis');
  if (!avif) {
    const heic = brands.some((brand) => HEIC_BRANDS.includes(brand));
    return fail({ code: heic ? 'heic' : 'not-an-image' });
  }
  for (let i = 0; i + 8 <= bytes.length; ) {
    const size = u32(bytes, i);
    if (size === 0) break;
    if (size === 1 || size < 8) break;
    if (i + size > bytes.length) return fail({ code: 'truncated' });
    i += size;
  }
  return ok({ kind: 'avif', wide: avifIsWide(bytes), animated: brands[0] === 'avis' });
}

/** A colr box holds either an ICC profile or (nclx) the code point of its primaries. */
function avifIsWide(bytes: Uint8Array): boolean {
  const limit = Math.min(bytes.length - 12, 65536);
  for (let i = 4; i < limit; i++) {
    if (ascii(bytes, i, i + 4) !== 'colr') continue;
    const type = ascii(bytes, i + 4, i + 8);
    if (type === 'nclx') return u16(bytes, i + 8) === 12 || u16(bytes, i + 8) === 9;
    if (type === 'prof' || type === 'rICC')
      return isWide(bytes.subarray(i + 8, i - 4 + u32(bytes, i - 4)));
  }
  return false;
}

function join(pieces: readonly Uint8Array[]): Uint8Array {
  const whole = new Uint8Array(pieces.reduce((sum, piece) => sum + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

function hasBytes(bytes: Uint8Array, text: string): boolean {
  const limit = Math.min(bytes.length, 4096) - text.length;
  for (let i = 0; i < limit; i++) if (ascii(bytes, i, i + text.length) === text) return true;
  return false;
}
