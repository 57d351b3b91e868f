import type { HazardLevel } from '../pigment/pigment-facts.ts';
import { handbookId, isToxic } from './pigment-lookup.ts';

/** Set of tools (slab, knife and rag) for a pigment. */
export type Tools = 'shared' | 'lead' | 'mercury' | 'arsenic' | 'own';

/** Pigments by toxic metal; tests compare these lists with the pigments' hazard sentences. */
const METAL: Readonly<Record<Exclude<Tools, 'shared' | 'own'>, readonly string[]>> = {
  lead: ['lead_white', 'lead_tin_yellow', 'naples_yellow', 'massicot', 'red_lead'],
  mercury: ['vermilion'],
  arsenic: ['orpiment', 'realgar'],
};

/** In order of preparation. */
export const TOOLS = ['shared', 'lead', 'mercury', 'arsenic', 'own'] as const;

export const TOOLS_WORDS = {
  shared: 'on the shared slab',
  lead: 'lead: slab, knife and rag of its own',
  mercury: 'mercury: slab, knife and rag of its own',
  arsenic: 'arsenic: slab, knife and rag of its own',
  own: 'toxic: slab, knife and rag of its own',
} as const satisfies Record<Tools, string>;

/** Tools for a pigment, by its metal or its hazard level. */
export function toolsOf(pigment: string, level: HazardLevel): Tools {
  const base = handbookId(pigment);
  for (const tools of ['lead', 'mercury', 'arsenic'] as const)
    if (METAL[tools].includes(base)) return tools;
  return isToxic(level) ? 'own' : 'shared';
}

/**
 * Copper, cobalt and zinc pigments, whose scraps and wash water are also collected (handbook
 * practice).
 */
const COLLECTED = ['azurite', 'malachite', 'verdigris', 'smalt', 'zinc_white', 'si_pb28'];
export const isCollected = (pigment: string): boolean => COLLECTED.includes(handbookId(pigment));

/**
 * Pigments that lose colour when ground fine (a French workshop manuscript of the late 16th
 * century).
 */
const TEMPERED = ['smalt', 'azurite', 'malachite'];
export const isTempered = (pigment: string): boolean => TEMPERED.includes(handbookId(pigment));
