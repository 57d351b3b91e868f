import sharp from 'sharp';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { gather } from '../../src/harmony/gather.ts';
import { readPixels } from '../photo/read.ts';
import { render } from '../tools/specimen-camera.ts';
import { sampleScenes } from '../tools/specimen-samples.ts';

const soak = process.env.KINGCUP_SOAK === '1';

// Our own rendered specimens, one of them by default; the smaller photographs are made by another library (libvips).
const scenes = soak ? sampleScenes() : sampleScenes().slice(0, 1);
test.each(scenes.map((scene) => [scene.name, scene] as const))(
  '%s gives the same colours at 1, 4 and 12 megapixels',
  async (_, scene) => {
    // By default a picture of 4 megapixels is enlarged to 12, which takes a tenth of drawing it.
    const { file, width, height } = await render(scene, soak ? 2930 : 1690);
    const full = soak
      ? await readPixels(file)
      : await readPixels(await sharp(file).resize(4100).jpeg({ quality: 95 }).toBuffer());
    expect(full.width * full.height).toBeGreaterThan(11.5e6);
    const large = gather(full);
    const middle = gather(await readPixels(file, soak ? 2366 : undefined));
    const small = gather(await readPixels(file, 1183));
    expect(width / height).toBeCloseTo(1.4, 2);
    if (!large.ok || !middle.ok || !small.ok) throw new Error('not gathered');
    for (const other of [middle.value, small.value]) {
      expect(other.colours.length).toBe(large.value.colours.length);
      for (const [i, c] of large.value.colours.entries()) {
        const near = other.colours.map((o) => deltaE00(o.lab, c.lab));
        expect(Math.min(...near)).toBeLessThan(2);
        expect(near.indexOf(Math.min(...near))).toBe(i);
      }
    }
  },
  300_000,
);
