import type { HazardLevel } from '../pigment/facts.ts';
import { isToxic, knownAs } from './known.ts';

/** Which slab, knife and rag a pigment is prepared with. */
export type Tools = 'shared' | 'lead' | 'mercury' | 'arsenic' | 'own';

/** By chemistry; tests hold these lists against the hazard sentences of the pigments. */
const METAL: Readonly<Record<Exclude<Tools, 'shared' | 'own'>, readonly string[]>> = {
  lead: ['lead_white', 'lead_tin_yellow', 'naples_yellow', 'massicot', 'red_lead'],
  mercury: ['vermilion'],
  arsenic: ['orpiment', 'realgar'],
};

/** The order in which a morning goes through them. */
export const TOOLS = ['shared', 'lead', 'mercury', 'arsenic', 'own'] as const;

export const TOOLS_WORDS = {
  shared: 'on the shared slab',
  lead: 'lead: slab, knife and rag of its own',
  mercury: 'mercury: slab, knife and rag of its own',
  arsenic: 'arsenic: slab, knife and rag of its own',
  own: 'toxic: slab, knife and rag of its own',
} as const satisfies Record<Tools, string>;

export function toolsOf(pigment: string, level: HazardLevel): Tools {
  const base = knownAs(pigment);
  for (const tools of ['lead', 'mercury', 'arsenic'] as const)
    if (METAL[tools].includes(base)) return tools;
  return isToxic(level) ? 'own' : 'shared';
}

/** Copper, cobalt and zinc colours: their scraps and water are collected too (handbook practice). */
const COLLECTED = ['azurite', 'malachite', 'verdigris', 'smalt', 'zinc_white', 'si_pb28'];
export const isCollected = (pigment: string): boolean => COLLECTED.includes(knownAs(pigment));

/** They lose colour when they are ground fine (a French workshop manuscript of the late 16th century). */
const TEMPERED = ['smalt', 'azurite', 'malachite'];
export const isTempered = (pigment: string): boolean => TEMPERED.includes(knownAs(pigment));
