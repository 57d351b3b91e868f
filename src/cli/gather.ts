import { basename } from 'node:path';
import { hexOf } from '../colour/hex.ts';
import { gatherFaultWords } from '../harmony/faults.ts';
import { gather } from '../harmony/gather.ts';
import type { Gathered } from '../harmony/harmony.ts';
import { photoFaultWords } from '../photo/file.ts';
import { decodeFile } from './decode.ts';
import { Plain } from './fault.ts';
import { readOptions, wholeNumber } from './options.ts';

const HELP = `kingcup gather PHOTO... [--colours N] [--json]

Finds the harmony of each photograph: one to seven colours with their shares, their local
colour and their ladder of six steps from highlight to deepest fold.
Reads JPEG, PNG, WebP, TIFF and AVIF.

  --colours N   as many colours, 1 to 7 (without it: as many as the photograph asks for)
  --json        one JSON document instead of a table
`;

/** A photograph's harmony as `gather --json` writes it. */
export interface GatheredPhoto {
  readonly photo: string;
  readonly width: number;
  readonly height: number;
  readonly colours: readonly {
    readonly name: string;
    readonly hex: string;
    readonly lab: readonly number[];
    readonly share: number;
    readonly accent: boolean;
    readonly ladder: readonly {
      readonly step: string;
      readonly lab: readonly number[];
      readonly share: number;
    }[];
  }[];
  readonly remarks: readonly string[];
}

export async function gatherVerb(args: readonly string[]): Promise<void> {
  const options = readOptions('gather', args, {
    colours: { type: 'string' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    process.stdout.write(HELP);
    return;
  }
  const wanted = options.value('colours');
  const colours = wanted === undefined ? undefined : wholeNumber('colours', wanted, 1, 7);
  if (options.files.length === 0)
    throw new Plain('Name at least one photograph: kingcup gather PHOTO.');

  const photos: GatheredPhoto[] = [];
  const failures: string[] = [];
  for (const [i, path] of options.files.entries()) {
    if (options.files.length > 1)
      process.stderr.write(`${i + 1} of ${options.files.length}: ${basename(path)}\n`);
    const result = await gatherFile(path, colours);
    if (typeof result === 'string') failures.push(`${basename(path)}: ${result}`);
    else photos.push(result);
  }
  if (failures.length > 0) throw new Plain(failures.join('\n'));
  for (const { photo, remarks } of photos)
    for (const remark of remarks) process.stderr.write(`${basename(photo)}: ${remark}\n`);
  process.stdout.write(
    options.has('json') ? `${JSON.stringify({ photos })}\n` : photos.map(table).join('\n'),
  );
}

/** The harmony of one file, or the sentence that says why there is none. */
export async function gatherFile(path: string, colours?: number): Promise<GatheredPhoto | string> {
  const decoded = await decodeFile(path);
  if (!decoded.ok) return photoFaultWords(decoded.fault);
  const gathered = gather(decoded.value.pixels, colours === undefined ? {} : { colours });
  if (!gathered.ok) return gatherFaultWords[gathered.fault.code];
  const { width, height, remarks } = decoded.value;
  return asJson(path, width, height, gathered.value, [...remarks, ...gathered.value.remarks]);
}

function asJson(
  photo: string,
  width: number,
  height: number,
  gathered: Gathered,
  remarks: readonly string[],
): GatheredPhoto {
  return {
    photo,
    width,
    height,
    colours: gathered.colours.map(({ name, lab, share, accent, ladder }) => ({
      name,
      hex: hexOf(lab),
      lab,
      share,
      accent,
      ladder,
    })),
    remarks,
  };
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
