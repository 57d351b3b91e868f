import { mkdir, writeFile } from 'node:fs/promises';
import { resolve } from 'node:path';
import { render } from './specimen-camera.ts';
import { sampleScenes } from './specimen-samples.ts';

/** Height of the sample pictures in pixels. */
const HEIGHT = 1000;

/**
 * Draws the three sample specimens again, as JPEG, with the truth of their regions measured in the
 * finished files: samples/*.jpg and samples/truth.json.
 */
export async function main(folder = resolve(process.cwd(), 'samples')): Promise<void> {
  await mkdir(folder, { recursive: true });
  const photographs = [];
  for (const scene of sampleScenes()) {
    const { name, width, height, file, regions } = await render(scene, HEIGHT);
    await writeFile(resolve(folder, `${name}.jpg`), file);
    photographs.push({
      photo: `${name}.jpg`,
      width,
      height,
      regions: regions.map(({ name, lab, share }) => ({
        name,
        lab: lab.map((v) => Number(v.toFixed(2))),
        share: Number(share.toFixed(5)),
      })),
    });
    console.error(`${name}.jpg ${width}×${height} ${Math.round(file.length / 1000)} kB`);
  }
  await writeFile(
    resolve(folder, 'truth.json'),
    `${JSON.stringify({ about: 'Median of L*, a*, b* of each region over its pixels in the finished file.', photographs }, null, 2)}\n`,
  );
}
