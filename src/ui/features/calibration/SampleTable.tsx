import type { MeasuredSample } from '../../../book/schema/calibration.ts';
import { nameOf } from '../../../colour/describe-colour.ts';
import { spectrum } from '../../../colour/grid.ts';
import { labOf } from '../../../colour/lab.ts';
import { BrushedPaint } from '../../components/BrushedPaint.tsx';
import { cssColourOf } from '../../state/screen-colour.ts';
import { calibrationTexts } from '../../texts/calibration-texts.ts';
import { CompositionFields } from './CompositionFields.tsx';
import { rowFault } from './sample-file.ts';

/** Table of a file's samples: the colour of each, and the paints that the painter assigns to it. */
export function SampleTable({
  samples,
  onChange,
}: {
  samples: readonly MeasuredSample[];
  onChange: (samples: readonly MeasuredSample[]) => void;
}) {
  return (
    <ul class="swatch-table">
      {samples.map((sample, row) => {
        const lab = labOf(spectrum(sample.reflectance));
        const fault = rowFault(sample);
        return (
          <li key={sample.name} data-wrong={fault === '' ? undefined : ''}>
            <BrushedPaint
              name={sample.name}
              width={96}
              height={34}
              strokes={[{ hex: cssColourOf(lab), words: nameOf(lab) }]}
            />
            <p class="swatch-sample">
              <strong>{sample.name}</strong>
              <br />
              <span class="small">
                {sample.parts.length === 0 ? calibrationTexts.notUsed : nameOf(lab)}
              </span>
            </p>
            <CompositionFields
              of={sample.name}
              parts={sample.parts}
              onChange={(parts) =>
                onChange(samples.map((each, i) => (i === row ? { ...each, parts } : each)))
              }
            />
            {fault && (
              <p class="field-fault" role="alert">
                {fault}
              </p>
            )}
          </li>
        );
      })}
    </ul>
  );
}
