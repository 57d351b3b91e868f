import sharp from 'sharp';
import { expect, test } from 'vitest';
import { deltaE00 } from '../../src/colour/difference.ts';
import { gather } from '../../src/harmony/gather.ts';
import { readPixels } from '../photo/read.ts';
import { render } from '../tools/specimen-camera.ts';
import { sampleScenes } from '../tools/specimen-samples.ts';

// At 1, 4 and 12 megapixels, and of photographs: tests/simulation/gather-size.test.ts.
test('a specimen gives the same colours at a third of a megapixel and at three', async () => {
  const { file } = await render(sampleScenes()[0]!, 480);
  const large = await sharp(file).resize(2016).jpeg({ quality: 95 }).toBuffer();
  const [own, more] = [gather(await readPixels(file)), gather(await readPixels(large))];
  if (!own.ok || !more.ok) throw new Error('not gathered');
  expect(own.value.colours.length).toBe(6);
  expect(more.value.colours.length).toBe(6);
  own.value.colours.forEach(({ lab }, i) => {
    const near = more.value.colours.map((o) => deltaE00(o.lab, lab));
    expect(near.indexOf(Math.min(...near))).toBe(i);
    expect(near[i]).toBeLessThan(1);
  });
});
