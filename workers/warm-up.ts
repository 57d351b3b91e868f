import { seededRandom } from '../src/random.ts';
import type { JobResult } from './job-protocol.ts';
import { readPhoto } from './photo.ts';
import { canvasOf } from './row-strips.ts';

/**
 * Warm-up with a synthetic image: reading it makes the engine compile the code for the next
 * photograph.
 */
export interface WarmUpJob {
  readonly act: 'rehearse';
}

const WIDTH = 1700;
const HEIGHT = 1200;

/** After this many readings most of the code is compiled. */
const TIMES = 2;

/**
 * Reads a synthetic image, large enough for the second thread and colourful enough to need every
 * segmentation run.
 */
export async function warmUp(): Promise<JobResult<null>> {
  const file = await drawn();
  for (let time = 0; time < TIMES; time++) await readPhoto({ file, keep: false }, () => {});
  return { value: null };
}

/** Draws soft overlapping dabs in many colours. */
function drawn(): Promise<Blob> {
  const { canvas, context } = canvasOf(WIDTH, HEIGHT, false);
  const next = seededRandom(1);
  for (let dab = 0; dab < 300; dab++) {
    const radius = 60 + 240 * next();
    const [x, y] = [WIDTH * next(), HEIGHT * next()];
    const shade = context.createRadialGradient(x, y, 0, x, y, radius);
    const hue = Math.floor(360 * next());
    shade.addColorStop(0, `hsl(${hue} 60% ${20 + Math.floor(60 * next())}%)`);
    shade.addColorStop(1, `hsl(${hue} 60% 50% / 0)`);
    context.fillStyle = shade;
    context.fillRect(x - radius, y - radius, 2 * radius, 2 * radius);
  }
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.8 });
}
