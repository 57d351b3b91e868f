import Papa from 'papaparse';

/** One row of the handbook sheet, by its column headings. */
export type SheetRow = Readonly<Record<string, string>>;

/** The handbook sheet as rows. */
export const readSheet = (csv: string): SheetRow[] =>
  Papa.parse<SheetRow>(csv, { header: true, skipEmptyLines: true }).data;

const HEAD = {
  source:
    'handbook figures gathered from Gettens & Stout 1942, Church 1915, Massey 1967, Uebele 1913, Gardner 1911, Field, WebExhibits and CAMEO; every figure carries its provenance word: seen (read in the named source), seen2 (in a later text that reports it), calc (worked out from figures seen), mem (from memory), est (no source: measure your own lot), common practice',
  licence: 'figures stated as facts',
  unit: 'density in g/cm3; oil in grams of linseed oil per 100 g of dry pigment; index of refraction',
  grid: 'one row a pigment',
};

/** Colour-index names that were read in a source; the others are from memory. */
const NAMES_SEEN = ['PR106', 'PG39', 'PB32', 'PB30', 'PG20', 'PB29', 'PY39', 'PBk9', 'NR9'];

/** Our own form of the sheet's figures; its sentences stay behind. */
export function figuresOf(rows: readonly SheetRow[]) {
  return { ...HEAD, pigments: rows.map(figureRow) };
}

function figureRow(row: SheetRow) {
  const cell = (column: string) => (row[column] ?? '').trim();
  const list = (column: string, by: RegExp) =>
    cell(column)
      .split(by)
      .map((one) => one.trim())
      .filter((one) => one !== '');
  const ciName = /^(none|$)/.test(cell('ci_name')) ? null : cell('ci_name');
  return {
    id: cell('id'),
    name: nameOf(cell('id'), cell('name')),
    synonyms: SYNONYMS[cell('id')] ?? list('synonyms', /;/),
    family: cell('family'),
    group: cell('group'),
    colourIndex: {
      name: ciName,
      number: cell('ci_number'),
      status: NAMES_SEEN.some((seen) => ciName === seen) ? 'seen' : 'mem',
    },
    density: range(row, 'density_min', 'density_max', 'density_default', 'density_status'),
    oil: range(
      row,
      'oil_min_g_per_100g',
      'oil_max_g_per_100g',
      'oil_default_g_per_100g',
      'oil_status',
    ),
    index: range(row, 'ri_min', 'ri_max', '', 'ri_status'),
    opacity: {
      word: cell('opacity_in_oil').startsWith('not') ? null : cell('opacity_in_oil'),
      status: 'mem',
    },
    strength: { word: cell('tinting_strength').replace(/ \(.*/, ''), status: 'mem' },
    drying: {
      word: cell('drying_in_oil').replace('n/a', '') || null,
      status: cell('drying_status'),
    },
    lightfast: { class: lightClass(cell('lightfast_class')), status: cell('lightfast_status') },
    hazard: { level: cell('hazard_level'), status: 'mem' },
    avoid: list('avoid_with', /;/),
    careWith: list('caution_with', /;/),
    used: { from: cell('used_from'), to: cell('used_to') },
    standIns: {
      names: list('modern_standin', / or |;/).map((name) => name.replace(/ \(.*/, '')),
      status: 'common practice',
    },
  };
}

function range(row: SheetRow, min: string, max: string, value: string, status: string) {
  const number = (column: string) => {
    const text = (row[column] ?? '').trim();
    return text === '' ? null : Number(text);
  };
  const [low, high, middle] = [number(min), number(max), number(value)];
  if (low === null || high === null) return null;
  return { ...(value === '' ? {} : { value: middle }), min: low, max: high, status: row[status] };
}

/** The light class alone: I, II, or what stands in its place. */
const lightClass = (text: string): string => {
  const plain = /^(I{1,3})\b/.exec(text)?.[1];
  return plain ?? (/fugitive|poor|unsafe/.test(text) ? 'unlisted, fugitive' : 'unlisted');
};

/** Names as a label can carry them. */
function nameOf(id: string, printed: string): string {
  const short: Record<string, string> = {
    lead_tin_yellow: 'Lead-tin yellow',
    yellow_lake: 'Yellow lake',
    naples_yellow: 'Naples yellow',
    saffron: 'Saffron',
    red_earth: 'Red earth',
    carmine_lake: 'Carmine lake',
    ultramarine: 'Ultramarine',
    prussian_blue: 'Prussian blue',
    cassel_earth: 'Cassel earth',
    bone_black: 'Bone black',
    charcoal_black: 'Charcoal black',
    si_pbr24: 'Buff titanate',
    si_pv19: 'Quinacridone rose',
    si_pb29: 'Ultramarine, synthetic',
  };
  return short[id] ?? printed;
}

/** Where the printed list mixes names with remarks, the names alone. */
const SYNONYMS: Record<string, string[]> = {
  lead_white: ['white lead', 'flake white', 'ceruse', 'Cremnitz white'],
  lead_tin_yellow: ['giallolino', 'masticot'],
  yellow_lake: ['weld', 'reseda lake', 'arzica', 'pink', 'Dutch pink', 'stil de grain'],
  massicot: ['litharge', 'lead monoxide yellow'],
  saffron: ['crocus'],
  red_earth: [
    'red ochre',
    'sinoper',
    'terra rossa',
    'light red',
    'Indian red',
    'Venetian red',
    'English red',
    'brown-red',
  ],
  vermilion: ['cinnabar'],
  carmine_lake: ['cochineal lake', 'crimson lake', 'Florence lake', 'kermes', 'lac'],
  realgar: ['red arsenic', 'sandarac'],
  azurite: ['mountain blue', 'German azure', 'Lombard azure', 'bice', 'blue verditer'],
  ultramarine: ['lapis lazuli', 'azure', 'ultramarine ash'],
  indigo: ['florey', 'woad', 'anil', 'inde'],
  prussian_blue: ['Berlin blue', 'Paris blue', 'iron blue'],
  malachite: ['mountain green', 'green bice', 'green verditer'],
  verdigris: ['vert-de-gris', 'Spanish green', 'copper resinate'],
  cassel_earth: ['Van Dyke earth', 'Cologne earth', 'Van Dyke brown'],
  bone_black: ['ivory black', 'drop black'],
  charcoal_black: ['vine black', 'blue black', 'beech black', 'Frankfort black'],
  lamp_black: ['soot black', 'lampblack'],
  titanium_white: ['titanium dioxide'],
  zinc_white: ['zinc oxide', 'Chinese white'],
};
