import { labOfHex } from '../colour/gamut-mapping.ts';
import type { Lab } from '../colour/lab.ts';
import { CliError } from './cli-error.ts';
import { numbers, type Parsed, type Typed } from './options.ts';
import { readText } from './read-text.ts';

/** The options that name colours, for {@link targetsIn}. */
export const TARGET_OPTIONS = {
  lab: { type: 'string', multiple: true },
  hex: { type: 'string', multiple: true },
  harmony: { type: 'string', multiple: true },
} as const;

/** What those options are, for a verb's help. */
export const TARGET_HELP = `  --lab L,a,b      a colour in CIELAB under D65 (L 0 to 100; a and b from -160 to 160)
  --hex #rrggbb    a colour of an sRGB screen
  --harmony FILE   all colours of what “gather --json” or “transpose --json” wrote`;

/** Every colour that was named, in the order of the command line. @throws CliError where none was */
export async function targetsIn({ given }: Parsed): Promise<Lab[]> {
  const targets: Lab[] = [];
  for (const typed of given) targets.push(...(await targetsOf(typed)));
  if (targets.length === 0)
    throw new CliError('Name a colour: --lab L,a,b, --hex #rrggbb or --harmony FILE.');
  return targets;
}

/** The colours that one option names; none where it names no colour. @throws CliError */
export async function targetsOf({ name, value }: Typed): Promise<Lab[]> {
  if (name === 'lab') return [labTyped('lab', value)];
  if (name === 'hex') return [hexTyped('hex', value)];
  return name === 'harmony' ? harmonyFile(value) : [];
}

const labTyped = (option: string, text: string): Lab =>
  checkedLab(option, numbers(option, text, 3, '62,18,34') as unknown as Lab);

function hexTyped(option: string, text: string): Lab {
  if (!/^#?[0-9a-f]{6}$/i.test(text))
    throw new CliError(`--${option} takes six hexadecimal digits like #a1b2c3, not “${text}”.`);
  return labOfHex(text);
}

/** One colour as three numbers or six digits. @throws CliError */
export const colourTyped = (option: string, text: string): Lab =>
  text.includes(',') ? labTyped(option, text) : hexTyped(option, text);

/** A colour within the bounds of a surface's. @throws CliError */
export function checkedLab(where: string, lab: Lab): Lab {
  const [L, a, b] = lab;
  if (!(L >= 0 && L <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160))
    throw new CliError(
      `${where}: ${lab.join(', ')} is no colour of a surface. L goes from 0 to 100, a and b from -160 to 160.`,
    );
  return lab;
}

/** All colours of what `gather --json` or `transpose --json` wrote. @throws CliError */
async function harmonyFile(path: string): Promise<Lab[]> {
  const text = await readText(path);
  let document: unknown;
  try {
    document = JSON.parse(text);
  } catch {
    throw new CliError(`${path} is not JSON. --harmony takes what “gather --json” wrote.`);
  }
  const labs = labsIn(document).map((lab) => {
    if (!Array.isArray(lab) || lab.length !== 3 || !lab.every(Number.isFinite))
      throw new CliError(`${path} holds a colour without three numbers in its “lab”.`);
    return checkedLab(path, lab as unknown as Lab);
  });
  if (labs.length === 0)
    throw new CliError(`${path} holds no colours. --harmony takes what “gather --json” wrote.`);
  return labs;
}

type Loose = Readonly<Record<string, unknown>> | null | undefined;
const listIn = (value: unknown): readonly Loose[] => (Array.isArray(value) ? value : []);

/** Whatever stands where a colour should, of a harmony as gathered or as transposed. */
function labsIn(document: unknown): unknown[] {
  const { photos, transposition } = (document ?? {}) as NonNullable<Loose>;
  const moved = (transposition as Loose)?.transposed as Loose;
  return [
    ...listIn(photos).flatMap((photo) => listIn(photo?.colours).map((colour) => colour?.lab)),
    ...listIn(moved?.colours).map((colour) => colour?.to),
  ];
}
