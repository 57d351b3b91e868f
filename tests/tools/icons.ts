import { copyFileSync, mkdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { h } from 'preact';
import { renderToString } from 'preact-render-to-string';
import sharp from 'sharp';
import {
  BookIcon,
  PaletteIcon,
  PrintIcon,
  WalkIcon,
} from '../../src/ui/components/drawn/icons.tsx';

/** Makes the icons of the installed app from the one drawing. Run after the drawing was changed. */
const ROOT = resolve(import.meta.dirname, '../..');
const DRAWING = resolve(ROOT, 'src/ui/app/app-icon.svg');
const FOLDER = resolve(ROOT, 'src/ui/public');

mkdirSync(resolve(FOLDER, 'icons'), { recursive: true });
for (const [name, size] of [
  ['192', 192],
  ['512', 512],
  ['maskable-512', 512],
] as const)
  await sharp(DRAWING, { density: 144 })
    .resize(size, size)
    .png({ compressionLevel: 9, palette: true })
    .toFile(resolve(FOLDER, `icons/${name}.png`));
// One colour, where a device paints its icons itself: the flower alone, its petals parted.
const drawing = readFileSync(DRAWING, 'utf8');
const petal = /<path id="petal"[^>]*>/.exec(drawing)![0];
const five = [0, 72, 144, 216, 288].map(
  (turn) => `<use href="#petal" transform="rotate(${turn})"/>`,
);
const flower = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512"><defs>${petal}<mask id="parted" maskUnits="userSpaceOnUse" x="-256" y="-256" width="512" height="512"><g fill="#fff" stroke="#000" stroke-width="12">${five.join('')}</g><circle r="47"/><circle r="26" fill="#fff"/></mask></defs><g transform="translate(256 266) scale(1.12)"><rect x="-256" y="-256" width="512" height="512" mask="url(#parted)"/></g></svg>`;
await sharp(Buffer.from(flower), { density: 144 })
  .resize(512, 512)
  .png({ compressionLevel: 9, palette: true })
  .toFile(resolve(FOLDER, 'icons/monochrome-512.png'));

// Shortcuts wear the app's own drawn icons, light on the grey of its ground.
const SHORTCUTS = { walk: WalkIcon, palette: PaletteIcon, sheet: PrintIcon, book: BookIcon };
for (const [name, Icon] of Object.entries(SHORTCUTS)) {
  const icon = renderToString(h(Icon, { size: 56 })).replace(
    '<svg',
    '<svg x="20" y="20" color="#f1f1f1"',
  );
  const tile = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 96 96"><rect width="96" height="96" rx="20" fill="#4d4d4d"/>${icon}</svg>`;
  await sharp(Buffer.from(tile), { density: 144 })
    .resize(96, 96)
    .png({ compressionLevel: 9, palette: true })
    .toFile(resolve(FOLDER, `icons/shortcut-${name}.png`));
}
copyFileSync(DRAWING, resolve(FOLDER, 'icon.svg'));
