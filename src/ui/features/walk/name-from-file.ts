/**
 * A name for a specimen from its file name: '' for a name made by a camera, otherwise the words of
 * the stem.
 */
export function nameFromFile(fileName: string): string {
  const stem = fileName.replace(/\.[^.]*$/, '');
  return /^(img|dsc|dscn|pxl|image|photo|mvimg|p)?[-_ ]?\d[\d_ -]*/i.test(stem)
    ? ''
    : stem.replaceAll(/[-_]+/g, ' ').slice(0, 200);
}
