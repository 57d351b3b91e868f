import { inflateSync } from 'node:zlib';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { colorants, isWide } from '../../src/photo/icc-profile.ts';
import { inspectFile } from '../../src/photo/image-file.ts';
import { BROAD, widePng } from '../tools/gamut.ts';

const flat = () => sharp({ create: { width: 40, height: 30, channels: 3, background: '#7a5230' } });
const facts = (bytes: Uint8Array) => inspectFile(bytes, (packed) => inflateSync(packed));

describe('what a file says of itself', () => {
  test.each(['jpeg', 'png', 'webp', 'avif', 'tiff', 'gif'] as const)('%s', async (kind) => {
    const bytes = await flat().toFormat(kind).toBuffer();
    expect(facts(bytes)).toEqual({ ok: true, value: { kind, wide: false, animated: false } });
  });

  // Every length but the whole is too short; a byte or two after the end (padding) does no harm.
  test.each(['jpeg', 'png', 'webp', 'avif', 'gif'] as const)('%s cut short', async (kind) => {
    const bytes = await flat().toFormat(kind).toBuffer();
    for (const share of [0.3, 0.6, 0.9, 0.99])
      expect(facts(bytes.subarray(0, Math.floor(bytes.length * share))), `${share}`).toEqual({
        ok: false,
        fault: { code: 'truncated' },
      });
    // A GIF tells its end by its last byte alone.
    const padded = facts(Buffer.concat([bytes, Buffer.alloc(2)]));
    expect(padded).toMatchObject(
      kind === 'gif' ? { fault: { code: 'truncated' } } : { value: { kind } },
    );
  });

  test('Display P3 is wide in every container, sRGB in none', async () => {
    for (const kind of ['jpeg', 'png', 'webp', 'avif'] as const) {
      const wide = await flat().withIccProfile('p3').toFormat(kind).toBuffer();
      expect(facts(wide), kind).toMatchObject({ value: { kind, wide: true } });
      const plain = await flat().withIccProfile('srgb').toFormat(kind).toBuffer();
      expect(facts(plain), kind).toMatchObject({ value: { kind, wide: false } });
    }
    const rgb = new Uint8Array(30).fill(200);
    for (const colorants of [undefined, BROAD])
      expect(facts(await widePng(rgb, 5, 2, colorants))).toMatchObject({ value: { wide: true } });
  });

  test('the colorants of Display P3, adapted to D50 as profiles hold them', async () => {
    // SMPTE RP 431-2 primaries with the D65 white, Bradford to D50: red 0.6812, 0.3189; green 0.2846, 0.6747
    // (computed).
    const { icc } = await sharp(await flat().withIccProfile('p3').png().toBuffer()).metadata();
    const found = colorants(icc!)!;
    expect(found.red[0]).toBeCloseTo(0.681, 2);
    expect(found.green[1]).toBeCloseTo(0.6747, 2);
    expect(isWide(icc!)).toBe(true);
  });

  test.each([
    ['empty', new Uint8Array(0), 'empty'],
    ['words', Buffer.from('this is no picture'), 'not-an-image'],
    ['one byte', Buffer.from([0xff]), 'not-an-image'],
    ['only the start of a JPEG', Buffer.from([0xff, 0xd8]), 'truncated'],
    ['a HEIC', heif('heic'), 'heic'],
    ['a HEIC sequence', heif('hevc'), 'heic'],
    ['a film', heif('isom'), 'not-an-image'],
  ])('%s is refused', (_, bytes, code) => {
    expect(facts(bytes)).toEqual({ ok: false, fault: { code } });
  });

  test('bytes by lot never throw and never hang', () => {
    let state = 7;
    const next = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
      return state >>> 24;
    };
    const starts = ['ffd8ffe0', '89504e470d0a1a0a', '52494646', '00000018667479706176696600'];
    const counted = new Map<string, number>();
    for (let round = 0; round < 400; round++) {
      const head = Buffer.from(starts[round % starts.length]!, 'hex');
      const body = Uint8Array.from({ length: 300 }, next);
      const found = facts(Buffer.concat([head, body]));
      const code = found.ok ? 'read' : found.fault.code;
      counted.set(code, (counted.get(code) ?? 0) + 1);
    }
    // No start of a file is taken for a whole one.
    expect([...counted.keys()].toSorted()).toEqual(['not-an-image', 'truncated']);
    expect(counted.get('truncated')).toBeGreaterThan(100);
  });
});

function heif(brand: string): Buffer {
  const bytes = Buffer.alloc(32);
  bytes.writeUInt32BE(16, 0);
  bytes.write(`ftyp${brand}`, 4, 'latin1');
  return bytes;
}
