import { copyFileSync, mkdirSync } from 'node:fs';
import { resolve } from 'node:path';
import sharp from 'sharp';

/** Makes the icons of the installed app from the one drawing. Run after the drawing was changed. */
const ROOT = resolve(import.meta.dirname, '../..');
const DRAWING = resolve(ROOT, 'src/ui/drawn/app-icon.svg');
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
copyFileSync(DRAWING, resolve(FOLDER, 'icon.svg'));
