import type { PigmentPlan } from '../palette/day-plan.ts';
import { handbookId } from '../palette/pigment-lookup.ts';
import { isCollected } from '../palette/tool-groups.ts';
import { joinWords, midSentence } from '../wording.ts';

/**
 * Pigments whose scrapings may go into a ground or an imprimatura (common practice); black only
 * under a tenth.
 */
const INTO_GROUND = [
  'yellow_ochre',
  'raw_sienna',
  'burnt_sienna',
  'raw_umber',
  'burnt_umber',
  'red_earth',
  'lead_white',
  'chalk',
];
const LITTLE = ['bone_black'];

/** Sentences on cleaning at the end of the day and on the scrapings, for these pigments. */
export function cleaningOf(pigments: readonly PigmentPlan[]): readonly string[] {
  const names = (chosen: readonly PigmentPlan[]) =>
    joinWords(chosen.map(({ label }, i) => (i === 0 ? label : midSentence(label))));
  const toxic = pigments.filter(({ tools }) => tools !== 'shared');
  const collected = pigments.filter(({ key }) => isCollected(key));
  const ground = pigments.filter(({ key }) => INTO_GROUND.includes(handbookId(key)));
  const little = pigments.filter(({ key }) => LITTLE.includes(handbookId(key)));
  const kept = pigments.filter(({ key }) => ![...INTO_GROUND, ...LITTLE].includes(handbookId(key)));
  const lead = ground.some(({ tools }) => tools === 'lead');
  const words = [
    'Save the heaps worth keeping, light to dark. Scrape the middle, wipe, a few drops of oil, wipe again; brushes light to dark, soap last. Slab and muller the same, then a pinch of chalk.',
  ];
  if (toxic.length > 0)
    words.push(
      `${names(toxic)}: tools, wiping pot and labelled waste of their own; the soap water is collected too.`,
    );
  if (collected.length > 0)
    words.push(`${names(collected)}: scraps and wash water are collected, none down the sink.`);
  if (ground.length > 0)
    words.push(
      `Scrapings for a ground: ${joinWords(ground.map(({ label }) => midSentence(label)))}${
        little.length > 0 ? `, and ${midSentence(names(little))} under a tenth` : ''
      }. No skins.${lead ? ' Lead makes the whole batch lead paint: label it so.' : ''}`,
    );
  if (kept.length > 0)
    words.push(
      `Kept out of the scrapings: ${joinWords(kept.map(({ label }) => midSentence(label)))}.`,
    );
  return words;
}
