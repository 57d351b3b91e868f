import { hexOf } from '../colour/gamut-mapping.ts';
import { gather } from '../harmony/gather.ts';
import type { Gathered } from '../harmony/harmony.ts';
import { gatherFaultWords } from '../messages/harmony-faults.ts';
import {
  neutralFaultWords,
  photoFaultWords,
  photographRemarkWords,
} from '../messages/photograph-messages.ts';
import { type WhiteBalance, whiteBalanceAt } from '../photo/white-balance.ts';
import { decodeFile } from './decode.ts';

/** A photograph's harmony as `gather --json` writes it. */
export interface GatheredPhoto {
  readonly photo: string;
  readonly width: number;
  readonly height: number;
  readonly colours: readonly {
    readonly name: string;
    readonly hex: string;
    readonly lab: readonly number[];
    readonly share: number;
    readonly accent: boolean;
    readonly ladder: readonly {
      readonly step: string;
      readonly lab: readonly number[];
      readonly share: number;
    }[];
  }[];
  /** How the light was set right, where it was asked for. */
  readonly neutral?: {
    /** Pixel of the upright photograph. */
    readonly x: number;
    readonly y: number;
    /** Pixels along the side of the patch that was averaged. */
    readonly side: number;
    /** The patch's CIELAB before, and the matrix for linear sRGB that makes it grey. */
    readonly lab: readonly number[];
    readonly matrix: readonly (readonly number[])[];
  };
  readonly remarks: readonly string[];
}

export interface GatherFileOptions {
  /** 1…7; without it the photograph decides. */
  readonly colours?: number;
  /** Pixel of the upright photograph that was white or neutral grey: it sets the light right. */
  readonly neutral?: readonly [x: number, y: number];
}
export interface GatherTask {
  readonly path: string;
  readonly options: GatherFileOptions;
}

/** The harmony of one file, or the sentence that says why there is none. */
export async function gatherFile(
  path: string,
  options: GatherFileOptions = {},
): Promise<GatheredPhoto | string> {
  const decoded = await decodeFile(path);
  if (!decoded.ok) return photoFaultWords(decoded.fault);
  const { pixels, width, height, remarks } = decoded.value;
  const { colours, neutral } = options;
  // The middle of the pixel; the decoded copy of a very large photograph is smaller than it.
  const setting =
    neutral && whiteBalanceAt(pixels, (neutral[0] + 0.5) / width, (neutral[1] + 0.5) / height);
  if (setting && !setting.ok) return neutralFaultWords[setting.fault.code];
  const gathered = gather(pixels, { colours, adapt: setting?.value.matrix });
  if (!gathered.ok) return gatherFaultWords[gathered.fault.code];
  const sentences = [...remarks, ...gathered.value.remarks].map(photographRemarkWords);
  const photo = asJson(path, width, height, gathered.value, sentences);
  return neutral && setting
    ? { ...photo, neutral: asSaid(neutral, setting.value, width / pixels.width) }
    : photo;
}

/** @param scale pixels of the photograph to one of those that were read */
function asSaid([x, y]: readonly [number, number], { matrix, by }: WhiteBalance, scale: number) {
  if (by.kind !== 'spot') throw new Error('a spot sets the light by itself');
  return { x, y, side: Math.round(by.spot.side * scale), lab: by.spot.lab, matrix };
}

function asJson(
  photo: string,
  width: number,
  height: number,
  gathered: Gathered,
  remarks: readonly string[],
): GatheredPhoto {
  return {
    photo,
    width,
    height,
    colours: gathered.colours.map(({ name, lab, share, accent, ladder }) => ({
      name,
      hex: hexOf(lab),
      lab,
      share,
      accent,
      ladder,
    })),
    remarks,
  };
}
