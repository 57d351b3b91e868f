import type { Lab } from '../colour/lab.ts';
import type { LetDown, Mixture, MixturePart } from './mixture-types.ts';

/** A part by volume of paste; `letDown` marks a part taken from the pigment's let-down pile. */
export interface PilePart extends MixturePart {
  readonly letDown?: boolean;
}

/** A mixture in the form in which its pile is mixed. */
export interface PileParts {
  readonly parts: readonly PilePart[];
  readonly letDowns: readonly LetDown[];
  readonly lab: Lab;
}

/**
 * The form in which a mixture is mixed: with let-downs, else whole parts, else the recipe's shares.
 */
export function pilePartsOf({ letDown, parts, partsLab, recipe, lab }: Mixture): PileParts {
  if (letDown !== undefined)
    return { parts: letDown.parts, letDowns: letDown.letDowns, lab: letDown.lab };
  if (parts.length > 0) return { parts, letDowns: [], lab: partsLab };
  return {
    parts: recipe.map(({ pigment, share }) => ({ pigment, parts: share })),
    letDowns: [],
    lab,
  };
}

/** Resolves let-downs: volumes of the pigments themselves, largest first; not necessarily whole. */
export function volumesOf(
  parts: readonly PilePart[],
  letDowns: readonly LetDown[] = [],
): readonly MixturePart[] {
  const volumes = new Map<string, number>();
  const put = (pigment: string, more: number) =>
    volumes.set(pigment, (volumes.get(pigment) ?? 0) + more);
  for (const { pigment, parts: count, letDown } of parts) {
    const weak = letDown ? letDowns.find((one) => one.pigment === pigment) : undefined;
    put(pigment, weak ? count / (1 + weak.whiteParts) : count);
    if (weak) put(weak.white, (count * weak.whiteParts) / (1 + weak.whiteParts));
  }
  return [...volumes]
    .map(([pigment, parts]) => ({ pigment, parts }))
    .sort((a, b) => b.parts - a.parts);
}

/** {@link volumesOf} a mixture; without let-downs its parts unchanged. */
export function mixtureVolumesOf(mixture: Mixture): readonly MixturePart[] {
  const { parts, letDowns } = pilePartsOf(mixture);
  return letDowns.length === 0 ? parts : volumesOf(parts, letDowns);
}
