import type { Lab } from '../colour/lab.ts';
import type { LetDown, Mixture, Part } from './mixture.ts';

/** Parts by volume of paste; `letDown` marks a part taken from that pigment's let-down pile. */
export interface LaidPart extends Part {
  readonly letDown?: boolean;
}

/** A mixture as a pile is laid of it. */
export interface Laid {
  readonly parts: readonly LaidPart[];
  readonly letDowns: readonly LetDown[];
  readonly lab: Lab;
}

/** How a mixture is laid: with its let-downs where it has them, else in whole parts. */
export function laidOf({ letDown, parts, partsLab, recipe, lab }: Mixture): Laid {
  if (letDown !== undefined)
    return { parts: letDown.parts, letDowns: letDown.letDowns, lab: letDown.lab };
  if (parts.length > 0) return { parts, letDowns: [], lab: partsLab };
  return {
    parts: recipe.map(({ pigment, share }) => ({ pigment, parts: share })),
    letDowns: [],
    lab,
  };
}

/** The pigments themselves by volume, what the let-downs bring counted in, most of it first; need not be whole. */
export function volumesOf(
  parts: readonly LaidPart[],
  letDowns: readonly LetDown[] = [],
): readonly Part[] {
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

/** {@link volumesOf} a mixture as it is laid; whole parts as they stand where nothing is let down. */
export function volumesIn(mixture: Mixture): readonly Part[] {
  const { parts, letDowns } = laidOf(mixture);
  return letDowns.length === 0 ? parts : volumesOf(parts, letDowns);
}
