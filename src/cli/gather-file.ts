import { hexOf } from '../colour/hex.ts';
import { gatherFaultWords } from '../harmony/faults.ts';
import { gather } from '../harmony/gather.ts';
import type { Gathered } from '../harmony/harmony.ts';
import { photoFaultWords } from '../photo/file.ts';
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
  readonly remarks: readonly string[];
}

export interface GatherFileOptions {
  /** 1…7; without it the photograph decides. */
  readonly colours?: number;
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
  const gathered = gather(decoded.value.pixels, options);
  if (!gathered.ok) return gatherFaultWords[gathered.fault.code];
  const { width, height, remarks } = decoded.value;
  return asJson(path, width, height, gathered.value, [...remarks, ...gathered.value.remarks]);
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
