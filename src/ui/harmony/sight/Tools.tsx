import './sight.css';
import { useId } from 'preact/hooks';
import { saySight } from '../../words/sight.ts';
import { labels } from '../state.ts';
import { HandPanel } from './HandPanel.tsx';
import { KeepPanel } from './KeepPanel.tsx';
import { LightPanel } from './LightPanel.tsx';
import { open, type Tool, tool } from './tools.ts';

/** Toolbar of the photograph with its panel; one tool is open at a time. */
export function Tools({ hasPhotograph }: { hasPhotograph: boolean }) {
  const panel = useId();
  const now = tool.value;
  return (
    <div class="sight-tools">
      <fieldset class="tool-row">
        <legend class="unseen">{saySight.tools}</legend>
        {hasPhotograph && (
          <>
            <ToolButton which="light" panel={panel} />
            <ToolButton which="keep" panel={panel} />
          </>
        )}
        <ToolButton which="hand" panel={panel} />
      </fieldset>
      <div id={panel} class="tool-panel" hidden={now === null}>
        {now === 'light' && <LightPanel />}
        {now === 'keep' && <KeepPanel />}
        {now === 'hand' && <HandPanel canAdd={hasPhotograph && labels.value !== null} />}
      </div>
    </div>
  );
}

function ToolButton({ which, panel }: { which: Tool; panel: string }) {
  const isOpen = tool.value === which;
  return (
    <button
      type="button"
      class="tool"
      aria-expanded={isOpen}
      aria-controls={panel}
      onClick={() => open(which)}
    >
      {saySight[which]}
    </button>
  );
}
