import sharp from 'sharp';
import { expect, test } from 'vitest';
import { withoutMetadata } from '../../../src/book/store/jpeg-metadata.ts';

const made = (progressive = false) =>
  sharp({
    create: { width: 40, height: 24, channels: 3, background: { r: 150, g: 90, b: 40 } },
  })
    .composite([
      {
        input: { create: { width: 9, height: 9, channels: 3, background: '#1d6' } },
        left: 3,
        top: 5,
      },
    ])
    .withExif({
      IFD0: { Make: 'Nobody', Copyright: 'Somewhere Lane 4' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
    })
    .withXmp('<?xpacket?><x:xmpmeta xmlns:x="adobe:ns:meta/"><place>Somewhere</place></x:xmpmeta>')
    .withIccProfile('p3')
    .jpeg({ quality: 90, progressive })
    .toBuffer();

const own = (buffer: Uint8Array): ArrayBuffer => new Uint8Array(buffer).buffer;

test.each([false, true])(
  'drops place and maker, keeps profile and pixels (progressive: %s)',
  async (progressive) => {
    const before = await made(progressive);
    for (const word of ['Exif', 'Nobody', 'Somewhere']) expect(before.includes(word)).toBe(true);
    expect((await sharp(before).metadata()).icc?.length).toBeGreaterThan(0);
    // Phones hang whole further pictures, with metadata of their own, behind the end.
    const longer = Buffer.concat([before, before]);
    const after = Buffer.from(withoutMetadata(own(longer))!);
    expect(after.length).toBeLessThan(before.length);
    const metadata = await sharp(after).metadata();
    expect([metadata.exif, metadata.xmp, metadata.iptc]).toEqual([undefined, undefined, undefined]);
    expect(metadata.icc).toEqual((await sharp(before).metadata()).icc);
    for (const word of ['Exif', 'Nobody', 'Somewhere']) expect(after.includes(word)).toBe(false);
    const pixels = (jpeg: Buffer) => sharp(jpeg).raw().toBuffer();
    expect(await pixels(after)).toEqual(await pixels(before));
    expect(withoutMetadata(own(after))).toEqual(own(after));
  },
);

test('is null for what is no whole JPEG, however it is cut', async () => {
  const whole = await made();
  for (let length = 0; length < whole.length - 1; length += 7)
    expect(withoutMetadata(own(whole.subarray(0, length)))).toBeNull();
  expect(withoutMetadata(own(await sharp(whole).png().toBuffer()))).toBeNull();
});
