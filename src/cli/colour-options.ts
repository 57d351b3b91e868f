import { distinctNamesOf } from '../colour/describe-colour.ts';
import type { Lab } from '../colour/lab.ts';
import { CliError } from './cli-error.ts';
import type { Typed } from './options.ts';
import { readText } from './read-text.ts';
import { checkedLab, targetsOf } from './target-options.ts';

/** A colour as the command line knows it. */
export interface Given {
  readonly name: string;
  readonly lab: Lab;
  /** Share of the photograph; colours typed in share alike. */
  readonly share: number;
  /** Six steps, where a photograph gave them. */
  readonly ladder: readonly Lab[] | null;
}

/** Every colour that --lab, --hex and --harmony name, in order, with different names. @throws CliError */
export async function coloursOf(given: readonly Typed[]): Promise<Given[]> {
  const found: Omit<Given, 'name' | 'share'>[] = [];
  const told: (Pick<Given, 'name' | 'share'> | null)[] = [];
  for (const typed of given) {
    if (typed.name === 'harmony') {
      for (const one of await gathered(typed.value)) {
        found.push(one);
        told.push(one);
      }
      continue;
    }
    for (const lab of await targetsOf(typed)) {
      found.push({ lab, ladder: null });
      told.push(null);
    }
  }
  const names = distinctNamesOf(found.map(({ lab }) => lab));
  return found.map((one, i) => ({
    ...one,
    name: told[i]?.name ?? names[i]!,
    share: told[i]?.share ?? 1 / found.length,
  }));
}

/** One colour of an option like --shadows. @throws CliError */
export async function colourOption(
  name: string,
  text: string | undefined,
): Promise<Lab | undefined> {
  if (text === undefined) return undefined;
  const [lab] = await targetsOf({ name: text.startsWith('#') ? 'hex' : 'lab', value: text });
  if (!lab) throw new CliError(`--${name} takes a colour: L,a,b or #rrggbb.`);
  return lab;
}

async function gathered(path: string): Promise<Given[]> {
  // What is wrong with the file is said as for mix; then the names, shares and ladders are read.
  const labs = await targetsOf({ name: 'harmony', value: path });
  const { photos } = JSON.parse(await readText(path)) as {
    photos?: { colours?: { name?: unknown; lab: Lab; share?: unknown; ladder?: unknown }[] }[];
  };
  // A transposed harmony has colours only.
  if (!photos) {
    const names = distinctNamesOf(labs);
    return labs.map((lab, i) => ({ name: names[i]!, lab, share: 1 / labs.length, ladder: null }));
  }
  return photos
    .flatMap(({ colours }) => colours ?? [])
    .map(({ name, lab, share, ladder }, i) => ({
      name: typeof name === 'string' ? name : `colour ${i + 1}`,
      lab,
      share: typeof share === 'number' && share >= 0 && share <= 1 ? share : 0,
      ladder: ladderOf(path, ladder),
    }));
}

function ladderOf(path: string, ladder: unknown): readonly Lab[] | null {
  if (!Array.isArray(ladder) || ladder.length !== 6) return null;
  return ladder.map((step) => {
    const lab = (step as { lab?: unknown } | null)?.lab;
    if (!Array.isArray(lab) || lab.length !== 3 || !lab.every(Number.isFinite))
      throw new CliError(`${path} holds a ladder without three numbers in its “lab”.`);
    return checkedLab(path, lab as unknown as Lab);
  });
}
