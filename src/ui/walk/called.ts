/** A camera's file names say nothing; a name that a person gave is kept. */
export function calledBy(fileName: string): string {
  const stem = fileName.replace(/\.[^.]*$/, '');
  return /^(img|dsc|dscn|pxl|image|photo|mvimg|p)?[-_ ]?\d[\d_ -]*/i.test(stem)
    ? ''
    : stem.replaceAll(/[-_]+/g, ' ').slice(0, 200);
}
