import type { Entry } from '../../book/record.ts';
import { OptionalField } from './Fields.tsx';
import { changePassage } from './passages.ts';
import { sayPalette } from './words.ts';

const CM_PER_INCH = 2.54;

/** How large the canvas of a passage is: a pile may cover a share of it. */
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
        value={canvas?.widthCm || undefined}
        onKeep={(value) => put('widthCm', value)}
      />
      <OptionalField
        label={sayPalette.canvasHeight}
        value={canvas?.heightCm || undefined}
        help={
          sized
            ? sayPalette.inches(canvas.widthCm / CM_PER_INCH, canvas.heightCm / CM_PER_INCH)
            : sayPalette.canvasHelp
        }
        onKeep={(value) => put('heightCm', value)}
      />
    </>
  );
}
