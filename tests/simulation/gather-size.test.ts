import sharp from 'sharp';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { gather } from '../../src/harmony/gather.ts';
import type { GatheredColour } from '../../src/harmony/harmony.ts';
import { coloursOf, PHOTOGRAPHS } from '../photo/photographs.ts';
import { readPixels } from '../photo/read.ts';
import { describeShared } from '../shared.ts';
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

/** As many colours, each within CIEDE2000 2 of its own. */
function areSame(p: readonly GatheredColour[], q: readonly GatheredColour[]): boolean {
  const near = new Set(p.map(({ lab }) => q.findIndex((o) => deltaE00(lab, o.lab) < 2)));
  return p.length === q.length && near.size === p.length && !near.has(-1);
}

// The photographs of tests/published/gather-photos.test.ts, made smaller by another library (libvips),
// and enlarged where the file itself is smaller.
describeShared('real photographs', () => {
  const sizes = soak ? [0.6, 0.8, 1, 1.3, 1.6, 2, 2.5, 3, 3.5, 4, 12] : [1, 4, 12];
  test('a photograph gives the same colours at every size', async () => {
    const other: string[] = [];
    let pairs = 0;
    for (const { name, width, height } of PHOTOGRAPHS) {
      const gathered = new Map([['its own', await coloursOf(name)]]);
      for (const megapixels of sizes) {
        const scale = Math.sqrt((megapixels * 1e6) / (width * height));
        gathered.set(`${megapixels} MP`, await coloursOf(name, Math.round(width * scale)));
      }
      const all = [...gathered];
      all.forEach(([size, colours], i) => {
        for (const [again, p] of all.slice(i + 1)) {
          pairs++;
          if (!areSame(colours, p)) other.push(`${name} at ${size} and ${again}`);
        }
      });
    }
    console.log(`alike at two sizes: ${pairs - other.length} of ${pairs}; not ${other.join(', ')}`);
    expect(pairs).toBe((PHOTOGRAPHS.length * (sizes.length + 1) * sizes.length) / 2);
    // The ladybird has a pale green that half of the runs find: at one size it is a colour of its own.
    const asked = /at (its own|1 MP|4 MP) and (1|4|12) MP$/;
    expect(other.filter((words) => asked.test(words))).toEqual([]);
    expect(other.length).toBeLessThanOrEqual(pairs * 0.04);
  }, 900_000);
});
