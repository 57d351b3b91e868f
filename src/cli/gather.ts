import { availableParallelism } from 'node:os';
import { basename } from 'node:path';
import Tinypool from 'tinypool';
import { CliError } from './cli-error.ts';
import {
  type GatheredPhoto,
  type GatherFileOptions,
  type GatherTask,
  gatherFile,
} from './gather-file.ts';
import { numbers, readOptions, wholeNumber } from './options.ts';

const HELP = `kingcup gather PHOTO... [--colours N] [--neutral X,Y] [--json]

Finds the harmony of each photograph: one to seven colours with their shares, their local
colour and their ladder of six steps from highlight to deepest fold.
Reads JPEG, PNG, WebP, TIFF and AVIF.

  --colours N   as many colours, 1 to 7 (without it: as many as the photograph asks for)
  --neutral X,Y a spot of the upright photograph, in pixels from its top left corner, that was
                white or neutral grey: the light is set right by it, in every photograph named
  --json        one JSON document instead of a table
`;

export async function gatherVerb(args: readonly string[]): Promise<void> {
  const options = readOptions('gather', args, {
    colours: { type: 'string' },
    neutral: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    process.stdout.write(HELP);
    return;
  }
  const wanted = options.value('colours');
  const colours = wanted === undefined ? undefined : wholeNumber('colours', wanted, 1, 7);
  const spot = options.value('neutral');
  const neutral = spot === undefined ? undefined : pixelOf(spot);
  if (options.files.length === 0)
    throw new CliError('Name at least one photograph: kingcup gather PHOTO.');

  const results = await gatherFiles(options.files, {
    ...(colours === undefined ? {} : { colours }),
    ...(neutral === undefined ? {} : { neutral }),
  });
  const photos: GatheredPhoto[] = [];
  const failures: string[] = [];
  for (const [i, result] of results.entries()) {
    if (typeof result === 'string') failures.push(`${basename(options.files[i]!)}: ${result}`);
    else photos.push(result);
  }
  if (failures.length > 0) throw new CliError(failures.join('\n'));
  for (const { photo, remarks } of photos)
    for (const remark of remarks) process.stderr.write(`${basename(photo)}: ${remark}\n`);
  process.stdout.write(
    options.has('json') ? `${JSON.stringify({ photos })}\n` : photos.map(table).join('\n'),
  );
}

/** A pixel, as X,Y. @throws CliError */
function pixelOf(text: string): [x: number, y: number] {
  const [x, y] = numbers('neutral', text, 2, '640,480') as [number, number];
  if (!(Number.isInteger(x) && Number.isInteger(y) && x >= 0 && y >= 0))
    throw new CliError(`--neutral takes whole pixels from 0 on, like 640,480, not “${text}”.`);
  return [x, y];
}

/** All photographs, in the order in which they were named; several at a time, one to a core. */
async function gatherFiles(
  paths: readonly string[],
  options: GatherFileOptions,
): Promise<(GatheredPhoto | string)[]> {
  if (paths.length === 1) return [await gatherFile(paths[0]!, options)];
  const pool = new Tinypool({
    filename: new URL('./gather-worker.js', import.meta.url).href,
    minThreads: 1,
    maxThreads: Math.min(paths.length, availableParallelism()),
    concurrentTasksPerWorker: 1,
  });
  let done = 0;
  try {
    return await Promise.all(
      paths.map(async (path) => {
        const result: GatheredPhoto | string = await pool.run({
          path,
          options,
        } satisfies GatherTask);
        done++;
        process.stderr.write(`${done} of ${paths.length}: ${basename(path)}\n`);
        return result;
      }),
    );
  } finally {
    await pool.destroy();
  }
}

const percent = (share: number): string =>
  share < 0.0095 ? `${(share * 100).toFixed(1)} %` : `${Math.round(share * 100)} %`;

/** A harmony as a table of plain text. */
export function table({ photo, width, height, colours }: GatheredPhoto): string {
  const rows = colours.map(({ name, hex, lab, share, accent, ladder }) => {
    const values = ladder.map((step) => Math.round(step.lab[0]!)).join(' ');
    const numbers = lab.map((v) => v.toFixed(1).padStart(6)).join(' ');
    return `  ${percent(share).padStart(6)}  ${name.padEnd(28)} ${hex}  Lab ${numbers}  L* of its folds ${values}${accent ? '  (accent)' : ''}`;
  });
  return `${basename(photo)}, ${width} × ${height}\n${rows.join('\n')}\n`;
}
