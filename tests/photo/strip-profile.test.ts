import { inflateSync } from 'node:zlib';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { stripP3Profile } from '../../src/photo/strip-profile.ts';
import { BROAD, widePng } from '../tools/gamut.ts';

const inflate = (packed: Uint8Array) => inflateSync(packed);
const flat = () => sharp({ create: { width: 40, height: 30, channels: 3, background: '#c83c3c' } });

test('a Display P3 JPEG keeps its numbers and its rotation, and loses its profile', async () => {
  // The profile is set in, nothing is converted: a plain JPEG and the profile of another.
  const turned = await flat().withMetadata({ orientation: 6 }).jpeg().toBuffer();
  const plain = await sharp(turned).keepExif().jpeg().toBuffer();
  expect((await sharp(plain).metadata()).icc).toBeUndefined();
  const { icc } = await sharp(await flat().withIccProfile('p3').jpeg().toBuffer()).metadata();
  const head = Buffer.alloc(18);
  head.writeUInt16BE(0xffe2, 0);
  head.writeUInt16BE(icc!.length + 16, 2);
  head.write('ICC_PROFILE\0\x01\x01', 4, 'latin1');
  const tagged = Buffer.concat([plain.subarray(0, 2), head, icc!, plain.subarray(2)]);
  expect((await sharp(tagged).metadata()).icc).toEqual(icc);
  const bare = stripP3Profile(tagged, inflate)!;
  expect((await sharp(bare).metadata()).icc).toBeUndefined();
  expect((await sharp(bare).metadata()).orientation).toBe(6);
  const pixels = (bytes: Uint8Array) => sharp(bytes).raw().toBuffer();
  expect((await pixels(bare)).equals(await pixels(plain))).toBe(true);
});

test('a Display P3 PNG too', async () => {
  const rgb = Uint8Array.from({ length: 30 }, (_, i) => 7 * i);
  const wide = await widePng(rgb, 5, 2);
  expect((await sharp(wide).metadata()).icc?.length).toBeGreaterThan(0);
  const bare = stripP3Profile(wide, inflate)!;
  expect((await sharp(bare).metadata()).icc).toBeUndefined();
  expect(Uint8Array.from(await sharp(bare).raw().toBuffer())).toEqual(rgb);
});

test('any other file stays as it is', async () => {
  const rgb = new Uint8Array(30).fill(200);
  for (const bytes of [
    await flat().jpeg().toBuffer(),
    await flat().withIccProfile('srgb').jpeg().toBuffer(),
    await flat().png().toBuffer(),
    await flat().withIccProfile('p3').webp().toBuffer(),
    await widePng(rgb, 5, 2, BROAD),
    Buffer.from('words'),
    new Uint8Array(0),
  ])
    expect(stripP3Profile(bytes, inflate)).toBeNull();
});

test('half a file never throws and never hangs', async () => {
  const jpeg = await flat().withIccProfile('p3').jpeg().toBuffer();
  const png = await widePng(new Uint8Array(30).fill(9), 5, 2);
  for (const bytes of [jpeg, png]) {
    let [kept, bare] = [0, 0];
    for (let length = 0; length < bytes.length; length += 7) {
      const found = stripP3Profile(bytes.subarray(0, length), inflate);
      if (found === null) kept++;
      else {
        expect(found.length).toBeLessThan(length);
        bare++;
      }
    }
    // Before the end of the profile there is nothing to take out, after it there is.
    expect(kept).toBeGreaterThan(5);
    expect(bare).toBeGreaterThan(1);
  }
});
