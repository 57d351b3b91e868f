import sharp from 'sharp';
import { expect, test } from 'vitest';
import { decodeBytes } from '../../src/cli/decode.ts';

/** Red above, blue below, as a camera held on its side stores it: the picture lies, and EXIF says how. */
async function lying(orientation: number, turn: number): Promise<Uint8Array> {
  const [width, height] = [40, 60];
  const data = new Uint8Array(width * height * 3);
  for (let i = 0; i < width * height; i++)
    data.set(i < (width * height) / 2 ? [200, 40, 30] : [40, 90, 160], 3 * i);
  const upright = sharp(data, { raw: { width, height, channels: 3 } });
  const turned = await upright.rotate(turn).png().toBuffer();
  return sharp(turned).jpeg({ quality: 95 }).withMetadata({ orientation }).toBuffer();
}

// EXIF 2.3, tag 0x0112: 6 is shown turned by 90 degrees clockwise, 8 by 270, 3 by 180.
test.each([
  [1, 0],
  [3, 180],
  [6, 270],
  [8, 90],
])('a photograph of orientation %d comes upright', async (orientation, turn) => {
  const decoded = await decodeBytes(await lying(orientation, turn));
  if (!decoded.ok) throw new Error(decoded.fault.code);
  const { pixels } = decoded.value;
  expect([pixels.width, pixels.height]).toEqual([40, 60]);
  const at = (x: number, y: number) => [
    ...pixels.data.slice(4 * (y * 40 + x), 4 * (y * 40 + x) + 3),
  ];
  for (const x of [4, 35]) {
    expect(at(x, 5)[0]).toBeGreaterThan(150);
    expect(at(x, 54)[2]).toBeGreaterThan(120);
    expect(at(x, 54)[0]).toBeLessThan(80);
  }
});
