import './photograph-tools.css';
import { useId } from 'preact/hooks';
import { regionLabels } from '../../state/harmony/current-harmony.ts';
import { activeTool, type EditorTool, toggleTool } from '../../state/harmony/photograph-tools.ts';
import { photographTexts } from '../../texts/photograph-texts.ts';
import { ManualCorrectionPanel } from './ManualCorrectionPanel.tsx';
import { MaskPanel } from './MaskPanel.tsx';
import { WhiteBalancePanel } from './WhiteBalancePanel.tsx';

/** Toolbar of the photograph with its panel; one tool is open at a time. */
export function PhotographTools({ hasPhotograph }: { hasPhotograph: boolean }) {
  const panel = useId();
  const now = activeTool.value;
  return (
    <div class="sight-tools">
      <fieldset class="tool-row">
        <legend class="unseen">{photographTexts.tools}</legend>
        {hasPhotograph && (
          <>
            <ToolButton which="light" panel={panel} />
            <ToolButton which="keep" panel={panel} />
          </>
        )}
        <ToolButton which="hand" panel={panel} />
      </fieldset>
      <div id={panel} class="tool-panel" hidden={now === null}>
        {now === 'light' && <WhiteBalancePanel />}
        {now === 'keep' && <MaskPanel />}
        {now === 'hand' && (
          <ManualCorrectionPanel canAdd={hasPhotograph && regionLabels.value !== null} />
        )}
      </div>
    </div>
  );
}

function ToolButton({ which, panel }: { which: EditorTool; panel: string }) {
  const isOpen = activeTool.value === which;
  return (
    <button
      type="button"
      class="tool"
      aria-expanded={isOpen}
      aria-controls={panel}
      onClick={() => toggleTool(which)}
    >
      {photographTexts[which]}
    </button>
  );
}
