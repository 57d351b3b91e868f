import { hexOf } from '../colour/gamut-mapping.ts';
import type { Cloth, Garment } from '../drapery/cloth-types.ts';
import { clothShapes } from '../drawing/cloth-and-heap-shapes.ts';
import type { DrawnLadder } from '../drawing/drawn-ladder.ts';
import {
  clothShapeInput,
  type GarmentDrawingInput,
  paintShapes,
} from '../drawing/painted-garment.ts';
import { escapeHtml } from '../escape-html.ts';

const paintGarment = (garment: GarmentDrawingInput) =>
  paintShapes(garment, clothShapes(clothShapeInput(garment)));

const WIDTH = 300;
const HEIGHT = 400;

const ladderOf = ({ folds }: Cloth): DrawnLadder =>
  folds.map(({ step, lab, share, deltaE00 }) => ({
    step: step as DrawnLadder[number]['step'],
    hex: hexOf(lab),
    share,
    reachable: deltaE00 <= 3,
  }));

/** Garments side by side as one SVG drawing, on neutral ground. */
export function clothSvg(garments: readonly Garment[]): string {
  const width = WIDTH * garments.length;
  const drawn = garments.map((garment, i) => {
    const { pegs, shadow, layers, colour } = paintGarment({
      ladder: ladderOf(garment),
      ...(garment.trim ? { trim: ladderOf(garment.trim) } : {}),
      ...(garment.lining ? { lining: ladderOf(garment.lining) } : {}),
      seed: 7 + i,
      detail: 'fine',
      width: WIDTH,
      height: HEIGHT,
    });
    const masses = layers.flatMap((layer) => [
      ...layer.masses.map(({ d, place }) => `<path d="${d}" fill="${colour(layer.part, place)}"/>`),
      layer.hatch ? `<path d="${layer.hatch}" fill="url(#out)" fill-rule="evenodd"/>` : '',
    ]);
    return [
      `<g transform="translate(${i * WIDTH} 0)">`,
      `<path d="${shadow}" transform="translate(4 5) scale(0.1)" fill="#000" fill-opacity="0.15"/>`,
      `<g transform="scale(0.1)">${masses.join('')}</g>`,
      ...pegs.map(({ x, y }) => `<circle cx="${x}" cy="${y}" r="5" fill="#757575"/>`),
      '</g>',
    ].join('');
  });
  const names = garments.map(({ name, stuff, way }) => `${name}, ${stuff}, ${way}`).join('; ');
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${HEIGHT}" width="${width}" height="${HEIGHT}" role="img"><title>${escapeHtml(`Hanging cloth: ${names}`)}</title><defs><pattern id="out" width="55" height="55" patternUnits="userSpaceOnUse" patternTransform="rotate(-52)"><path d="M0 15H55" stroke="#000" stroke-opacity="0.5" stroke-width="7"/><path d="M0 22H55" stroke="#fff" stroke-opacity="0.5" stroke-width="7"/></pattern></defs><rect width="100%" height="100%" fill="#b4b4b4"/>${drawn.join('')}</svg>\n`;
}
