import { adaptationMatrix } from '../colour/adaptation.ts';
import { spectrum } from '../colour/grid.ts';
import { type Lab, labOf, labOfXYZ, xyzOfLab } from '../colour/lab.ts';
import { multiplyColumn } from '../colour/matrix.ts';
import { D50, D65 } from '../colour/observer.ts';
import { cellsOf, readCgats, tablesOf } from '../pigment/import/cgats.ts';
import { readNumber } from '../pigment/import/parse-number.ts';
import { fail, ok, type Result } from '../result.ts';
import type { CalibrationFault } from './calibration-fault.ts';
import { type Homography, homography, type Point } from './homography.ts';

/** Layout of a 24-patch chart, numbered row by row; the last row is neutral. */
export const CHART = { columns: 6, rows: 4, patches: 24 } as const;

/**
 * Reads the colours (CIELAB, D65) of a chart's 24 patches from the chart's own file: CGATS text
 * with spectra, or with LAB_L, LAB_A, LAB_B or XYZ_X, XYZ_Y, XYZ_Z under D50 (ISO 13655).
 */
export function readChart(text: string): Result<readonly Lab[], CalibrationFault> {
  const spectra = readCgats(text);
  if (spectra.ok) {
    const { samples } = spectra.value;
    return counted(samples.map(({ R }) => labOf(spectrum<'R'>(R))));
  }
  for (const table of tablesOf(text.split(/\r\n|\n|\r/))) {
    const fields = table.fields.map((field) => field.toUpperCase());
    for (const [names, isLab] of [
      [['LAB_L', 'LAB_A', 'LAB_B'], true],
      [['XYZ_X', 'XYZ_Y', 'XYZ_Z'], false],
    ] as const) {
      const columns = names.map((name) => fields.indexOf(name));
      if (columns.includes(-1)) continue;
      const rows = table.rows.map((line) => {
        const cells = cellsOf(line, fields.length);
        return columns.map((column) => readNumber(cells[column] ?? ''));
      });
      if (rows.some((row) => row.includes(null))) return fail({ code: 'chart-values' });
      return counted(rows.map((row) => fromD50(row as number[], isLab)));
    }
  }
  return fail({ code: 'chart-values' });
}

const TO_D65 = adaptationMatrix(D50.white, D65.white);

function fromD50([p, q, r]: readonly number[], isLab: boolean): Lab {
  const [X, Y, Z] = isLab ? xyzOfLab([p!, q!, r!], D50.white) : [p!, q!, r!];
  const [x, y, z] = multiplyColumn(TO_D65, X, Y, Z);
  return labOfXYZ(x, y, z, D65.white);
}

const counted = (labs: readonly Lab[]): Result<readonly Lab[], CalibrationFault> =>
  labs.length === CHART.patches ? ok(labs) : fail({ code: 'chart-count', patches: labs.length });

/**
 * Possible orientations of a chart, from the centres of its four corner patches in order around the
 * chart, starting with any of them in either direction.
 * @param corners in pixels
 * @returns up to eight homographies from patch coordinates (column, row) to pixels; empty if the
 *   corners are collinear or not four
 */
export function chartHomographies(corners: readonly Point[]): Homography[] {
  if (corners.length !== 4) return [];
  const right = CHART.columns - 1;
  const bottom = CHART.rows - 1;
  const own: Point[] = [
    [0, 0],
    [right, 0],
    [right, bottom],
    [0, bottom],
  ];
  const turns = [0, 1, 2, 3].map((turn) => [...own.slice(turn), ...own.slice(0, turn)]);
  return [...turns, ...turns.map((each) => each.toReversed())].flatMap((from) => {
    const found = homography(from, corners);
    return found === null ? [] : [found];
  });
}
