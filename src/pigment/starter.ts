import type { Surface } from '../optics/surface.ts';
import { paintOf } from './curve.ts';
import curves from './data/curves.json' with { type: 'json' };
import type { Shelf, ShelfPaint } from './shelf.ts';

/** How the paints of our own shelf meet the air: gloss measured with its reflection (Saunderson). */
export const STARTER_SURFACE: Surface = { k1: 0.03, k2: 0.65, specular: 'included' };

const LABELS: Readonly<Record<string, string>> = {
  lead_white: 'Lead white',
  chalk: 'Chalk',
  lead_tin_yellow: 'Lead-tin yellow (type I)',
  yellow_ochre: 'Yellow ochre',
  raw_sienna: 'Raw sienna',
  orpiment: 'Orpiment',
  yellow_lake: 'Yellow lake (weld)',
  naples_yellow: 'Naples yellow (lead antimonate)',
  massicot: 'Massicot',
  red_earth: 'Red ochre / red earth',
  burnt_sienna: 'Burnt sienna',
  vermilion: 'Vermilion',
  red_lead: 'Red lead',
  madder_lake: 'Madder lake',
  carmine_lake: 'Carmine / cochineal lake',
  realgar: 'Realgar',
  azurite: 'Azurite',
  ultramarine: 'Ultramarine (natural)',
  smalt: 'Smalt',
  indigo: 'Indigo',
  prussian_blue: 'Prussian blue (later, optional)',
  malachite: 'Malachite',
  verdigris: 'Verdigris',
  green_earth: 'Green earth',
  raw_umber: 'Raw umber',
  burnt_umber: 'Burnt umber',
  cassel_earth: 'Cassel / Van Dyke earth',
  bone_black: 'Bone / ivory black',
  charcoal_black: 'Charcoal / vine black',
  lamp_black: 'Lamp black',
  titanium_white: 'Titanium white',
  zinc_white: 'Zinc white',
  si_pbr24: 'Buff titanate (chrome antimony titanate)',
  si_py53: 'Nickel titanate',
  si_py184: 'Bismuth vanadate',
  si_py154: 'Benzimidazolone yellow',
  si_py150: 'Nickel azo yellow',
  si_po73: 'Pyrrole orange',
  si_pr254: 'Pyrrole red',
  si_pv19: 'Quinacridone rose or red',
  si_pr177: 'Anthraquinone red',
  si_pb29: 'Ultramarine, synthetic',
  si_pb28: 'Cobalt blue',
  si_pb60: 'Indanthrone blue',
  si_pg7: 'Phthalocyanine green',
  si_pg18: 'Viridian',
  si_pg17: 'Chromium oxide green',
};

/** One of our own pigments as a paint of a shelf; null for an id that has no curve. */
export function ownPaint(id: string): ShelfPaint | null {
  const row = curves.curves.find((curve) => curve.id === id);
  if (row === undefined) return null;
  return {
    pigment: id,
    label: LABELS[id] ?? id,
    paint: paintOf(row as Parameters<typeof paintOf>[0]),
  };
}

function shelfOf(name: string, ids: readonly string[], white: string): Shelf {
  const paints = ids.map((id) => ownPaint(id)).filter((paint) => paint !== null);
  return { name, basis: 'volume', surface: STARTER_SURFACE, white, paints, remarks: [] };
}

/** The pigments of an old studio that a new book has in stock. */
export const starterShelf = (): Shelf =>
  shelfOf(
    'starter shelf',
    curves.curves.filter((curve) => curve.starter).map((curve) => curve.id),
    'lead_white',
  );

/** Every pigment that Kingcup knows by heart, period and stand-in. */
export const wholeShelf = (): Shelf =>
  shelfOf(
    'every pigment',
    curves.curves.map((curve) => curve.id),
    'lead_white',
  );
