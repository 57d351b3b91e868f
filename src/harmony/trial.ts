import { chance } from '../chance.ts';
import { exponential } from '../exponential.ts';
import { type Atoms, inSpace } from './atoms.ts';
import { bordersOfNodes, type Edges, FIELDS } from './border.ts';
import { cluster, LIGHTNESS } from './cluster.ts';
import { halve } from './halve.ts';
import { join } from './join.ts';
import { type Scene, sceneOf } from './scene.ts';

/** Nodes that a trial joins, fewest and most. */
const FEWEST = 48;
export const NODES = 64;
/** Weights of atoms are shaken up to this logarithm before they are put into nodes. */
const SHAKEN = 0.5;
/** The weight of lightness is shaken by so much of itself. */
const TILTED = 0.15;

/** What trials are of, as another thread may be told it: not which bins the atoms hold. */
export interface Dealt {
  readonly atoms: Pick<Atoms, 'count' | 'weight' | 'cells' | 'L' | 'a' | 'b'>;
  readonly edges: Edges;
  readonly scene: Scene;
  /** Colours, or undefined to choose by itself. */
  readonly wanted: number | undefined;
}

/** Gets trials over atoms ready. */
export function deal(
  { count, weight, cells, L, a, b }: Atoms,
  edges: Edges,
  wanted: number | undefined,
): Dealt {
  const atoms = { count, weight, cells, L, a, b };
  const room = new Float64Array(NODES * NODES * FIELDS);
  const { nodes, borders } = nodesAndBorders(atoms, edges, NODES, LIGHTNESS, room);
  return { atoms, edges, scene: sceneOf(nodes, borders), wanted };
}

/** Trials of the seeds `from` … `to` − 1. */
export interface TrialsWanted {
  readonly dealt: Dealt;
  readonly from: number;
  readonly to: number;
}

/** The trials of some seeds, in their order: the group of each atom in each, 0…6. */
export function trialsOf({ dealt, from, to }: TrialsWanted): Uint8Array[] {
  const trials = new Trials(dealt);
  return Array.from({ length: to - from }, (_, i) => trials.run(from + i));
}

/** Trials over the same atoms. */
class Trials {
  private readonly dealt: Dealt;
  /** Room for the borders of nodes, and for a copy, used again by every trial. */
  private readonly borders = new Float64Array(NODES * NODES * FIELDS);
  private readonly copy = new Float64Array(NODES * NODES * FIELDS);

  constructor(dealt: Dealt) {
    this.dealt = dealt;
  }

  /**
   * The groups of atoms in one trial, which sees the photograph a little otherwise than the next: nodes
   * are cut elsewhere, and what it costs to join them is shaken. What holds in most trials is in the
   * photograph; what only some of them tell was a matter of a hair.
   * @returns the group of each atom, 0…6
   */
  run(seed: number): Uint8Array {
    const { atoms, edges, scene, wanted } = this.dealt;
    const next = chance(seed);
    const [many, tilt, limit, far] = evenly(seed);
    const k = Math.round(FEWEST + (NODES - FEWEST) * many);
    const lightness = LIGHTNESS * (1 - TILTED + 2 * TILTED * tilt);
    const weight = atoms.weight.map((w) => w * exponential(SHAKEN * (2 * next() - 1)));
    const { nodes, borders, ofAtom } = nodesAndBorders(
      atoms,
      edges,
      k,
      lightness,
      this.borders,
      weight,
    );
    const group = join({ nodes, borders, scene }, this.copy, { limit, far, next }, wanted);
    return ofAtom.map((node) => group[node]!);
  }
}

/** Atoms put into at most k nodes, and the borders of these, in `room`. */
function nodesAndBorders(
  atoms: Dealt['atoms'],
  edges: Edges,
  k: number,
  lightness: number,
  room: Float64Array,
  weight?: Float64Array,
) {
  const { ofBin: ofAtom, ...nodes } = nodesOf(atoms, k, lightness, weight);
  const cells = new Float64Array(nodes.count);
  for (let atom = 0; atom < atoms.count; atom++) cells[ofAtom[atom]!]! += atoms.cells[atom]!;
  const borders = bordersOfNodes(edges, ofAtom, nodes.count, room);
  return { nodes: { ...nodes, cells }, borders, ofAtom };
}

/** The root of x⁵ = x + 1. */
const STEP = 1.1673039782614187;

/**
 * Four numbers 0…1 which, over any run of seeds, fill their space more evenly than chance: what all of a
 * trial depends on is shaken by them.
 * @see M. Roberts, 2018, on the R sequences (from memory)
 */
const evenly = (seed: number) =>
  [1, 2, 3, 4].map((power) => (0.5 + (seed + 1) / STEP ** power) % 1) as [
    number,
    number,
    number,
    number,
  ];

/** Atoms put into at most k nodes; `ofBin` is the node of each atom. */
export function nodesOf(
  atoms: Dealt['atoms'],
  k: number,
  lightness: number,
  weight = atoms.weight,
) {
  const { centres } = halve({ ...inSpace(atoms, lightness), weight }, k);
  // They are cut where the scene parts them already: to move them on would only unsettle them.
  return cluster({ ...atoms, bins: atoms.count }, k, lightness, 1, centres);
}
