import { type Reflectance, spectrum } from '../../src/colour/grid.ts';
import { type Lab, labOf } from '../../src/colour/lab.ts';
import { opaque } from '../../src/optics/opaque.ts';
import { addSurface } from '../../src/optics/surface.ts';
import { readShelf } from '../../src/pigment/import/read-shelf.ts';
import { readShared } from '../shared.ts';

/** One published measurement of a pigment: its masstone, and its tints in its own set's white. */
export interface Reference {
  readonly name: string;
  readonly masstone: Lab;
  /** 1 : 4 and 1 : 16; absent where only a masstone was measured. */
  readonly tints: readonly [Lab, Lab] | null;
  /** On the project's grid, for the places of its edges. */
  readonly R: Reflectance;
}

/**
 * Which measurement speaks for which pigment. FORS rows that the sheet flags (lakes over white, dark
 * paints on the instrument's floor) are left out. RIT rows are acrylics; Delft rows are oils and are
 * compared without a surface, as they were estimated.
 */
export const REFERENCES: Readonly<Record<string, readonly string[]>> = {
  lead_white: ['FORS Lead white'],
  chalk: ['FORS Chalk', 'Delft Chalk'],
  titanium_white: ['RIT Titanium white', 'Delft Titanium white'],
  zinc_white: ['FORS Zinc white'],
  lead_tin_yellow: ['FORS Lead-tin yellow I', 'FORS Lead-tin yellow II'],
  yellow_ochre: ['FORS Yellow ochre', 'RIT Yellow ochre', 'Delft French ochre (yellow)'],
  raw_sienna: ['FORS Raw sienna', 'RIT Raw sienna'],
  orpiment: ['FORS Orpiment'],
  yellow_lake: ['Delft Reseda lake (weld)'],
  naples_yellow: ['FORS Naples yellow'],
  massicot: ['FORS Massicot'],
  red_earth: ['FORS Red ochre', 'RIT Red oxide', 'Delft French ochre (reddish)'],
  burnt_sienna: ['RIT Burnt sienna'],
  vermilion: ['FORS Vermilion'],
  red_lead: ['FORS Red lead'],
  realgar: ['FORS Realgar'],
  madder_lake: ['Delft Red lake', 'RIT Quinacridone crimson'],
  azurite: ['FORS Azurite'],
  ultramarine: [
    'FORS Ultramarine',
    'RIT Ultramarine blue',
    'Delft Lapis lazuli (natural ultramarine)',
  ],
  smalt: ['FORS Smalt'],
  indigo: ['Delft Indigo'],
  malachite: ['FORS Malachite'],
  verdigris: ['FORS Verdigris'],
  raw_umber: ['RIT Raw umber', 'Delft Raw umber (greenish)'],
  burnt_umber: ['RIT Burnt umber'],
  bone_black: ['Delft Bone black', 'RIT Carbon black'],
  si_pr254: ['RIT Pyrrole red'],
  si_pv19: ['RIT Quinacridone magenta', 'RIT Quinacridone crimson'],
  si_pb29: ['RIT Ultramarine blue'],
  si_pb28: ['RIT Cobalt blue', 'FORS Cobalt blue'],
  si_pb60: ['RIT Anthraquinone blue'],
  si_pg7: ['RIT Phthalo green (blue shade)', 'FORS Phthalo green'],
  si_pg18: ['FORS Viridian'],
  si_pg17: ['RIT Chromium oxide green'],
};

/** No usable measurement: these are judged by the handbooks' words and by their tints. */
export const BY_WORDS_ALONE = [
  'charcoal_black',
  'lamp_black',
  'prussian_blue',
  'green_earth',
  'carmine_lake',
  'cassel_earth',
  'si_pbr24',
  'si_py53',
  'si_py184',
  'si_py154',
  'si_py150',
  'si_po73',
  'si_pr177',
];

/** Reads the measurements that the list names; only where the reference data are there. */
export function readReferences(): (name: string) => Reference {
  const sets = {
    RIT: shelfOf('artist-ks-rit2005.csv'),
    Delft: shelfOf('oil-ks-delft.csv'),
  };
  const rows = readShared('reference/historical-reflectance-fors.csv')
    .split(/\r?\n/)
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));
  return (name) => {
    const [set, pigment] = [name.slice(0, name.indexOf(' ')), name.slice(name.indexOf(' ') + 1)];
    if (set === 'FORS') {
      const row = rows.find(([first]) => first === pigment);
      if (row?.[1] !== 'ok') throw new RangeError(`${name} is flagged or missing`);
      const [L, a, b] = row.slice(2, 5).map(Number) as [number, number, number];
      const bands = row.slice(5).map(Number);
      const R = spectrum<'R'>([bands[0]!, bands[0]!, ...bands]);
      return { name, masstone: [L, a, b], tints: null, R };
    }
    const shelf = sets[set as 'RIT' | 'Delft'];
    const of = (one: string) => {
      const found = shelf.paints.find((each) => each.pigment === one);
      if (found === undefined) throw new RangeError(`no ${one} in ${set}`);
      return found.paint;
    };
    const laid = (white: number) =>
      addSurface(
        opaque([1, white], [of(pigment), of('Titanium white')], spectrum<'R'>()),
        shelf.surface,
      );
    return { name, masstone: labOf(laid(0)), tints: [labOf(laid(4)), labOf(laid(16))], R: laid(0) };
  };
}

function shelfOf(file: string) {
  const read = readShelf(readShared(`reference/${file}`), { name: file });
  if (!read.ok) throw new Error(`${file}: ${read.fault.code}`);
  return read.value;
}
