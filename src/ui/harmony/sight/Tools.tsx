import './sight.css';
import { useId } from 'preact/hooks';
import { photographTexts } from '../../words/sight.ts';
import { regionLabels } from '../state.ts';
import { ManualCorrectionPanel } from './HandPanel.tsx';
import { MaskPanel } from './KeepPanel.tsx';
import { WhiteBalancePanel } from './LightPanel.tsx';
import { activeTool, type EditorTool, toggleTool } from './tools.ts';

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
