import type { Entry } from '../../book/record.ts';
import { inchesOf, readLength } from '../locale.ts';
import { sayPalette } from '../words/palette.ts';
import { OptionalField } from './Fields.tsx';
import { changePassage } from './passages.ts';

/** The size of a passage's canvas, so that a pile can cover a share of it. */
export function Canvas({ passage }: { passage: Entry<'passage'> }) {
  const { canvas } = passage.body;
  const put = (side: 'widthCm' | 'heightCm', value: number | undefined) =>
    void changePassage(passage, (body) => ({
      canvas: { widthCm: 0, heightCm: 0, ...body.canvas, [side]: value ?? 0 },
    }));
  const sized = canvas && canvas.widthCm > 0 && canvas.heightCm > 0;
  return (
    <>
      <OptionalField
        label={sayPalette.canvasWidth}
        readAs={readLength}
        value={canvas?.widthCm || undefined}
        onKeep={(value) => put('widthCm', value)}
      />
      <OptionalField
        label={sayPalette.canvasHeight}
        readAs={readLength}
        value={canvas?.heightCm || undefined}
        help={
          sized
            ? sayPalette.inches(inchesOf(canvas.widthCm), inchesOf(canvas.heightCm))
            : sayPalette.canvasHelp
        }
        onKeep={(value) => put('heightCm', value)}
      />
    </>
  );
}
