import { hexOf } from '../colour/gamut-mapping.ts';
import type {
  Cloth,
  ClothRequest,
  DraperyWay,
  Fold,
  Garment,
  GarmentRequest,
} from '../drapery/cloth-types.ts';
import { FABRICS } from '../drapery/fabric.ts';
import { formulaOf } from '../drapery/formula.ts';
import { drape } from '../drapery/garment.ts';
import { SHIPPED_FORMULAS } from '../drapery/shipped-formulas.ts';
import { clothRemarkWords, draperyFaultWords } from '../messages/drapery-messages.ts';
import { mixFaultWords } from '../messages/mixture-messages.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { clothSvg } from './cloth-drawing.ts';
import { colourOption, coloursOf } from './colour-options.ts';
import { choice, type Parsed, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';
import { pileText } from './pile-text.ts';
import { shelfIn } from './shelf-option.ts';

const WAYS = {
  nature: 'as nature had it',
  deepened: 'deepened in its own hue',
  shot: 'shot cloth',
  glaze: 'underpaint and glaze',
} as const satisfies Record<string, DraperyWay>;
const WAY_NAMES = Object.keys(WAYS) as (keyof typeof WAYS)[];

const HELP = `kingcup drapery (--lab L,a,b | --hex #rrggbb | --harmony FILE | --worked)... [--way WAY] [--stuff STUFF]
            [--even] [--shadows COLOUR] [--glaze PIGMENT] [--lining COLOUR] [--trim COLOUR]
            [--neighbour COLOUR] [--upright] [--insist-black] [--only PIGMENT,...]
            [--shelf FILE] [--most 1-6] [--surface k1,k2] [--json | --svg | --formula]

Each colour becomes a cloth of six steps, from highlight to deepest fold, each with its pile.

  --way WAY           ${WAY_NAMES.join(', ')} (deepened; of a harmony's colours with a ladder, nature)
  --stuff STUFF       ${FABRICS.join(', ')} (wool): how lights and darks mass
  --even              steps evenly spaced
  --shadows COLOUR    the shadows of shot cloth
  --glaze PIGMENT     the pigment of the glaze (without it: one of the cloth's hue)
  --neighbour COLOUR  throws its light back into the shadow
  --upright           lights keep the cloth's hue
  --insist-black      black may deepen any shadow
  --only PIGMENT,...  only these pigments of the shelf
  --worked            the six formulas that come with Kingcup
  --json, --svg, --formula  JSON, a drawing of the cloths, or JSON of a formula by passages
A COLOUR is L,a,b or #rrggbb.
`;

export async function draperyVerb(args: readonly string[], output: Output): Promise<void> {
  const text = { type: 'string' } as const;
  const yes = { type: 'boolean' } as const;
  const several = { type: 'string', multiple: true } as const;
  const options = readOptions('drapery', args, {
    ...{ lab: several, hex: several, harmony: several, worked: yes, way: text, stuff: text },
    ...{ even: yes, shadows: text, glaze: text, lining: text, trim: text, neighbour: text },
    ...{ upright: yes, 'insist-black': yes, only: text, shelf: text, most: text, surface: text },
    ...{ json: yes, svg: yes, formula: yes, help: { type: 'boolean', short: 'h' } as const },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  if (options.files.length > 0)
    throw new CliError(
      `“${options.files[0]}” belongs to no option. “kingcup drapery --help” lists them.`,
    );
  const wishes = await wishesOf(options);
  if (wishes.length === 0)
    throw new CliError('Name a colour: --lab L,a,b, --hex #rrggbb, --harmony FILE, or --worked.');
  const most = wholeNumber('most', options.value('most') ?? '4', 1, 6);
  const shelf = await shelfIn(options, output);

  const garments = wishes.map(({ wish }) => garmentOf(wish, shelf, most));
  if (options.has('svg')) output.out(clothSvg(garments));
  else if (options.has('formula'))
    output.out(
      `${JSON.stringify({
        formulas: garments.map((garment, i) => formulaOf(garment, wishes[i]!.head, shelf)),
      })}\n`,
    );
  else if (options.has('json'))
    output.out(`${JSON.stringify({ garments: garments.map(garmentJson) })}\n`);
  else output.out(garments.map((garment) => table(garment, shelf)).join('\n'));
}

interface Wanted {
  readonly wish: GarmentRequest;
  readonly head: { readonly name: string; readonly subject: string; readonly note: string };
}

async function wishesOf(options: Parsed): Promise<Wanted[]> {
  const stuff = choice('stuff', options.value('stuff') ?? 'wool', FABRICS);
  const typedWay = options.value('way');
  const way = typedWay === undefined ? null : WAYS[choice('way', typedWay, WAY_NAMES)];
  const shadows = await colourOption('shadows', options.value('shadows'));
  const neighbour = await colourOption('neighbour', options.value('neighbour'));
  const lining = await colourOption('lining', options.value('lining'));
  const trim = await colourOption('trim', options.value('trim'));
  const glaze = options.value('glaze');
  const pigments = options
    .value('only')
    ?.split(',')
    .map((one) => one.trim());
  const shared = {
    stuff,
    even: options.has('even'),
    upright: options.has('upright'),
    insistBlack: options.has('insist-black'),
    ...(pigments ? { pigments } : {}),
  };
  const edge = (name: string, lab: ClothRequest['lab'] | undefined): ClothRequest | undefined =>
    lab && { ...shared, name, lab, way: 'deepened in its own hue' };
  const [inner, border] = [edge('lining', lining), edge('trim', trim)];
  const wanted = (await coloursOf(options.given)).map(
    ({ name, lab, ladder }): Wanted => ({
      head: { name, subject: `cloth of ${stuff}`, note: '' },
      wish: {
        ...shared,
        name,
        lab,
        way: way ?? (ladder ? WAYS.nature : WAYS.deepened),
        ...(ladder ? { ladder } : {}),
        ...(shadows ? { shadows } : {}),
        ...(neighbour ? { neighbour } : {}),
        ...(glaze ? { glaze } : {}),
        ...(inner ? { lining: inner } : {}),
        ...(border ? { trim: border } : {}),
      },
    }),
  );
  const worked = options.has('worked')
    ? SHIPPED_FORMULAS.map(({ wish, name, subject, note }) => ({
        wish,
        head: { name, subject, note },
      }))
    : [];
  return [...wanted, ...worked];
}

const clothJson = <C extends Cloth>(cloth: C) => ({
  ...cloth,
  remarks: cloth.remarks.map(clothRemarkWords),
});
const garmentJson = ({ lining, trim, ...cloth }: Garment): object => ({
  ...clothJson(cloth),
  lining: lining && clothJson(lining),
  trim: trim && clothJson(trim),
});

function garmentOf(wish: GarmentRequest, shelf: Shelf, most: number): Garment {
  const made = drape(wish, shelf, { most });
  if (made.ok) return made.value;
  const { fault } = made;
  switch (fault.code) {
    case 'no-range':
    case 'no-glaze':
    case 'wants-more':
      throw new CliError(draperyFaultWords(fault));
    default:
      throw new CliError(mixFaultWords(fault));
  }
}

function table(garment: Garment, shelf: Shelf): string {
  const label = new Map(shelf.paints.map((one) => [one.pigment, one.label]));
  const named = (pigment: string) => label.get(pigment) ?? pigment;
  const line = ({ step, lab, mixture, glaze }: Fold) => {
    const pile = pileText(mixture, shelf);
    const film = glaze
      ? `; glaze of ${named(glaze.pigment)}, ${(1000 * glaze.filmMm).toFixed(0)} micrometres`
      : '';
    return `  ${step.padEnd(15)} ${hexOf(lab)}  ${pile}${film}`;
  };
  const cloth = (one: Cloth, name: string) => [
    `${name}: ${one.stuff}, ${one.way}`,
    ...one.folds.map(line),
    ...(one.reflected ? [line(one.reflected)] : []),
    ...(one.black.why ? [`  Black may deepen it: ${one.black.why}.`] : []),
    ...(one.blackLoss
      ? [
          `  Deepened with ${named(one.blackLoss.black)} instead, the ${one.blackLoss.step} would have chroma ${one.blackLoss.withBlack.toFixed(0)}, not ${one.blackLoss.chroma.toFixed(0)}.`,
        ]
      : []),
    ...one.remarks.map((remark) => `  ${clothRemarkWords(remark)}`),
  ];
  return `${[
    ...cloth(garment, garment.name),
    ...(garment.lining ? cloth(garment.lining, `${garment.name}, lining`) : []),
    ...(garment.trim ? cloth(garment.trim, `${garment.name}, trim`) : []),
  ].join('\n')}\n`;
}
