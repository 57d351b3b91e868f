import type { GatherRemark } from '../harmony/harmony.ts';
import type { PhotoFault, PhotoRemark } from '../photo/image-file.ts';
import type { NeutralFault } from '../photo/white-balance.ts';

/** The sentence for a fault: what happened, then what to do. */
export function photoFaultWords(fault: PhotoFault): string {
  switch (fault.code) {
    case 'empty':
      return 'The file is empty. Choose the photograph again, or take it anew.';
    case 'not-an-image':
      return 'This is not a photograph that Kingcup knows. Choose a JPEG, PNG, WebP or AVIF file.';
    case 'truncated':
      return 'The photograph breaks off before its end. Copy it again from the camera and choose the whole file.';
    case 'heic':
      return 'This is a HEIC photograph, which cannot be read here. Save or share it as JPEG (the camera’s settings offer “most compatible”), then choose that.';
    case 'kind-not-here':
      return `This browser cannot open ${fault.kind.toUpperCase()} files. Save the photograph as JPEG or PNG and choose that.`;
    case 'too-large':
      return `The photograph has ${Math.round(fault.megapixels)} megapixels; up to 200 can be read. Save a smaller copy and choose that.`;
    case 'not-readable':
      return `The photograph cannot be read here (${fault.why}). Open it elsewhere, save it again as JPEG and choose that.`;
    case 'missing':
      return `The file cannot be opened (${fault.why}). Check its name and place.`;
  }
}

/** The sentence for each fault: what happened, then what to do. */
export const neutralFaultWords = {
  outside: 'That spot lies outside the photograph. Touch a place inside it.',
  'see-through': 'That spot is transparent, so it has no colour. Touch another.',
  clipped:
    'That spot is burnt out: the camera lost what the light did there. Touch a white or grey spot that is a little darker.',
  'too-dark':
    'That spot is too dark to show the colour of the light. Touch a lighter grey or white.',
  coloured:
    'That spot is strongly coloured, more than any usual light would make a white or a grey. Touch one that was neutral.',
} satisfies Record<NeutralFault['code'], string>;

/** The sentence for what is unusual in a photograph. */
export function photographRemarkWords(remark: PhotoRemark | GatherRemark): string {
  switch (remark.code) {
    case 'several-pictures':
      return 'The file holds several pictures; only the first is looked at.';
    case 'smaller-copy':
      return `${Math.round(remark.megapixels)} megapixels: looked at in a smaller copy of 16.`;
    case 'srgb-only':
      return 'This browser reads colours no further than sRGB: the brightest of this photograph are a little duller here.';
    case 'perturbed':
      return 'This browser alters the pixels that a page may read. The colours can be off by a trace.';
    case 'tiny-photograph':
      return 'The photograph is only a few pixels large, so shares and ladder say little.';
    case 'few-pixels':
      return 'Only a few pixels are looked at, so shares and ladder say little.';
    case 'blown-out':
      return `${Math.round(remark.share * 100)} % of what is looked at is blown out to white: its colour was lost in the camera.`;
    case 'lost-in-black':
      return `${Math.round(remark.share * 100)} % of what is looked at is black: its colour was lost in the dark.`;
    case 'one-colour':
      return 'There is one colour in it.';
    case 'fewer-colours':
      return `${remark.requested} colours were asked for, ${remark.found} could be told apart.`;
    case 'grey':
      return 'The photograph is grey throughout.';
  }
}
