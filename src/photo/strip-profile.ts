import { ascii, u16, u32 } from './bytes.ts';
import { isP3 } from './icc-profile.ts';

/**
 * Removes the colour profile from a Display P3 photograph. A browser whose canvas supports only
 * sRGB then returns the stored values, which are Display P3 values. The orientation tag stays.
 * Formats: ITU-T T.81 and ICC.1 Annex B.4 (JPEG), ISO/IEC 15948 (PNG).
 * @param inflate decompresses a PNG's deflated profile
 * @returns a copy; null if the profile is not Display P3 or the file is neither JPEG nor PNG
 */
export function stripP3Profile(
  bytes: Uint8Array,
  inflate: (packed: Uint8Array) => Uint8Array,
): Uint8Array<ArrayBuffer> | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return jpeg(bytes);
  if (bytes.length >= 8 && u32(bytes, 0) === 0x89504e47) return png(bytes, inflate);
  return null;
}

function jpeg(bytes: Uint8Array): Uint8Array<ArrayBuffer> | null {
  const kept = [bytes.subarray(0, 2)];
  const profile: Uint8Array[] = [];
  let i = 2;
  while (i + 4 <= bytes.length && bytes[i] === 0xff && bytes[i + 1] !== 0xda) {
    // Any number of 0xff fill bytes may precede a marker.
    const length = bytes[i + 1] === 0xff ? -1 : u16(bytes, i + 2);
    const segment = bytes.subarray(i, i + 2 + length);
    if (bytes[i + 1] === 0xe2 && ascii(bytes, i + 4, i + 15) === 'ICC_PROFILE')
      profile.push(segment.subarray(18));
    else kept.push(segment);
    i += 2 + length;
  }
  return isP3(joined(profile)) ? joined([...kept, bytes.subarray(i)]) : null;
}

/** PNG chunks that define the colour space of the values. */
const MEANINGS: readonly string[] = ['iCCP', 'cICP', 'sRGB', 'gAMA', 'cHRM'];
/** H.273 code points: primaries of Display P3 and the sRGB transfer function (ITU-T H.273). */
const [P3_PRIMARIES, SRGB_TRANSFER] = [12, 13];

function png(
  bytes: Uint8Array,
  inflate: (packed: Uint8Array) => Uint8Array,
): Uint8Array<ArrayBuffer> | null {
  const kept = [bytes.subarray(0, 8)];
  let found = false;
  for (let i = 8; i + 12 <= bytes.length; ) {
    const chunk = bytes.subarray(i, i + 12 + u32(bytes, i));
    const type = ascii(chunk, 4, 8);
    if (type === 'cICP') found ||= chunk[8] === P3_PRIMARIES && chunk[9] === SRGB_TRANSFER;
    if (type === 'iCCP') {
      const packed = chunk.subarray(chunk.indexOf(0, 8) + 2, -4);
      try {
        found ||= isP3(inflate(packed));
      } catch {
        // Treat a corrupt profile as absent.
      }
    }
    if (!MEANINGS.includes(type)) kept.push(chunk);
    i += chunk.length;
  }
  return found ? joined(kept) : null;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}
