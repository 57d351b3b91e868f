import { type Fewest, type FewestStep, fewest } from '../harmony/fewest-pigments.ts';
import { rangeMapping } from '../harmony/shelf-range.ts';
import { AMOUNTS } from '../harmony/variant-target.ts';
import { mixFaultWords } from '../messages/mixture-messages.ts';
import { constraintsOf } from '../mixture/mixing-preferences.ts';
import type { Shelf } from '../pigment/shelf.ts';
import { CliError } from './cli-error.ts';
import { choice, parseAmount, readOptions, wholeNumber } from './options.ts';
import type { Output } from './output.ts';
import { labelsOf, WISH_HELP, WISH_OPTIONS, wishIn } from './preference-options.ts';
import { SHELF_HELP, SHELF_OPTIONS, shelfIn } from './shelf-option.ts';
import { TARGET_HELP, TARGET_OPTIONS, targetsIn } from './target-options.ts';

const HELP = `kingcup fewest (--lab L,a,b | --hex #rrggbb | --harmony FILE)... [--within D]
               [--variants AMOUNT] [--longest N] [--key] [--shelf FILE] [--json]
               [further options]

Finds the fewest pigments that mix all the colours: for each number of pigments the best set, its
differences, and where one more stops helping. What must be in every mixture (--must) stands in
every set.

${TARGET_HELP}
  --within D       the difference that is allowed, CIEDE2000 (2); a colour that the whole shelf
                   misses by more may be missed by 1 more than that
  --variants AMOUNT  also every colour warmer, cooler, lighter, deeper, brighter and duller by this
                   much: small, middle or large
  --longest N      the longest list of pigments looked at, 1 to 24 (12)
  --key            first bring the colours together into the shelf's range of light and dark
${SHELF_HELP}
  --json           one JSON document instead of a table
${WISH_HELP}
`;

export async function fewestVerb(args: readonly string[], output: Output): Promise<void> {
  const options = readOptions('fewest', args, {
    ...TARGET_OPTIONS,
    ...SHELF_OPTIONS,
    ...WISH_OPTIONS,
    within: { type: 'string' },
    variants: { type: 'string' },
    longest: { type: 'string' },
    key: { type: 'boolean' },
    json: { type: 'boolean' },
    help: { type: 'boolean', short: 'h' },
  });
  if (options.has('help')) {
    output.out(HELP);
    return;
  }
  options.noFiles('fewest');
  const seen = await targetsIn(options);
  const within = parseAmount('within', options.value('within') ?? '2');
  const longest = wholeNumber('longest', options.value('longest') ?? '12', 1, 24);
  const typed = options.value('variants');
  const variants = typed === undefined ? undefined : choice('variants', typed, AMOUNTS);
  const shelf = await shelfIn(options, output);
  const wish = wishIn(options, shelf);
  const colours = options.has('key') ? seen.map(rangeMapping(seen, shelf)) : seen;
  const constraints = constraintsOf(shelf, wish);
  const found = fewest(colours, shelf, {
    within,
    longest,
    most: wish.most,
    constraints,
    ...(variants ? { variants } : {}),
  });
  if (!found.ok) throw new CliError(mixFaultWords(found.fault, labelsOf(shelf)));
  output.out(
    options.has('json')
      ? `${JSON.stringify({ fewest: { within, variants: variants ?? null, ...found.value } })}\n`
      : table(found.value, within, shelf),
  );
}

function table(
  { sought, curve, enough, shelf: whole }: Fewest,
  within: number,
  shelf: Shelf,
): string {
  const named = labelsOf(shelf);
  const line = ({ count, worst, mean, pigments }: FewestStep) =>
    `  ${String(count).padStart(2)}  ${worst.toFixed(1).padStart(5)}  ${mean.toFixed(1).padStart(5)}  ${pigments.map(named).join(', ')}\n`;
  const said = enough
    ? `${enough.count} ${enough.count === 1 ? 'pigment is' : 'pigments are'} enough: ${enough.pigments.map(named).join(', ')}.`
    : 'No number of pigments on this shelf comes so near.';
  const out = whole.filter((away) => away > within).length;
  const all = `${whole.length} ${sought.some(({ way }) => way) ? 'colours and variants' : 'colours'}`;
  const beyond =
    out > 0
      ? `${out} of the ${all} ${out === 1 ? 'lies' : 'lie'} further away than ${within} even with the whole shelf; these may be missed by 1 more than that.\n`
      : '';
  return `pigments, worst and mean difference\n${curve.map(line).join('')}${said}\n${beyond}`;
}
