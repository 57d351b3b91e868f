import type { Entry } from '../../../book/schema/record.ts';
import { inchesOf, readLength } from '../../state/locale-format.ts';
import { paletteTexts } from '../../texts/palette-texts.ts';
import { changePassage } from './passage-actions.ts';
import { OptionalField } from './StoredFields.tsx';

/** The size of a passage's canvas, so that a pile can cover a share of it. */
export function CanvasSizeFields({ passage }: { passage: Entry<'passage'> }) {
  const { canvas } = passage.body;
  const put = (side: 'widthCm' | 'heightCm', value: number | undefined) =>
    void changePassage(passage, (body) => ({
      canvas: { widthCm: 0, heightCm: 0, ...body.canvas, [side]: value ?? 0 },
    }));
  const sized = canvas && canvas.widthCm > 0 && canvas.heightCm > 0;
  return (
    <>
      <OptionalField
        label={paletteTexts.canvasWidth}
        readAs={readLength}
        value={canvas?.widthCm || undefined}
        onKeep={(value) => put('widthCm', value)}
      />
      <OptionalField
        label={paletteTexts.canvasHeight}
        readAs={readLength}
        value={canvas?.heightCm || undefined}
        help={
          sized
            ? paletteTexts.inches(inchesOf(canvas.widthCm), inchesOf(canvas.heightCm))
            : paletteTexts.canvasHelp
        }
        onKeep={(value) => put('heightCm', value)}
      />
    </>
  );
}
