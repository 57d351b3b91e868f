import { basename } from 'node:path';
import { CliError } from './cli-error.ts';
import {
  type GatheredPhoto,
  type GatherFileOptions,
  type GatherTask,
  gatherFile,
} from './gather-file.ts';
import { numbers, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';

const HELP = `kingcup gather PHOTO... [--colours N] [--neutral X,Y] [--json]

Finds the harmony of each photograph: one to seven colours with their shares, their local
colour and their ladder of six steps from highlight to deepest fold.
Reads JPEG, PNG, WebP, TIFF and AVIF.

  --colours N   as many colours, 1 to 7 (without it: as many as the photograph asks for)
  --neutral X,Y a spot of the upright photograph, in pixels from its top left corner, that was
                white or neutral grey: the light is set right by it, in every photograph named
  --json        one JSON document instead of a table
`;

/** @param openPool runs the photographs where there are several */
export async function gatherVerb(
  args: readonly string[],
  output: Output,
  openPool: OpenPool,
): Promise<void> {
  const options = readOptions('gather', args, {
    colours: { type: 'string' },
    neutral: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  const wanted = options.value('colours');
  const colours = wanted === undefined ? undefined : wholeNumber('colours', wanted, 1, 7);
  const spot = options.value('neutral');
  const neutral = spot === undefined ? undefined : pixelOf(spot);
  if (options.files.length === 0)
    throw new CliError('Name at least one photograph: kingcup gather PHOTO.');

  const how = {
    ...(colours === undefined ? {} : { colours }),
    ...(neutral === undefined ? {} : { neutral }),
  };
  const results = await gatherFiles(options.files, how, output, openPool);
  const photos: GatheredPhoto[] = [];
  const failures: string[] = [];
  for (const [i, result] of results.entries()) {
    if (typeof result === 'string') failures.push(`${basename(options.files[i]!)}: ${result}`);
    else photos.push(result);
  }
  if (failures.length > 0) throw new CliError(failures.join('\n'));
  for (const { photo, remarks } of photos)
    for (const remark of remarks) output.err(`${basename(photo)}: ${remark}\n`);
  output.out(
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

/** Runs the tasks of one command; {@link inThisThread}, or threads of its own. */
interface GatherPool {
  readonly run: (task: GatherTask) => Promise<GatheredPhoto | string>;
  readonly close: () => Promise<void>;
}

/** Opens a pool for so many photographs. */
export type OpenPool = (photographs: number) => GatherPool;

/** No threads: each photograph is decoded and gathered where it was asked for. */
export const inThisThread: OpenPool = () => ({
  run: ({ path, options }) => gatherFile(path, options),
  close: async () => {},
});

/** All photographs, in the order in which they were named; several at a time where the pool can. */
async function gatherFiles(
  paths: readonly string[],
  options: GatherFileOptions,
  { err }: Output,
  openPool: OpenPool,
): Promise<(GatheredPhoto | string)[]> {
  if (paths.length === 1) return [await gatherFile(paths[0]!, options)];
  const pool = openPool(paths.length);
  let done = 0;
  try {
    return await Promise.all(
      paths.map(async (path) => {
        const result = await pool.run({ path, options });
        done++;
        err(`${done} of ${paths.length}: ${basename(path)}\n`);
        return result;
      }),
    );
  } finally {
    await pool.close();
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
