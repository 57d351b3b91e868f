import type { ComponentChildren } from 'preact';

/** The `aria-describedby` of a control: the ids of its help and its error, where it has them. */
export function described(
  id: string,
  help: string | undefined,
  fault: string | undefined,
): string | undefined {
  const notes = [help && `${id}-help`, fault && `${id}-fault`].filter(Boolean);
  return notes.length > 0 ? notes.join(' ') : undefined;
}

/** A labelled control, with its help and error message below. */
export function LabelledControl({
  id,
  label,
  help,
  fault,
  class: className = 'field',
  children,
}: {
  id: string;
  label: string;
  help?: string | undefined;
  fault?: string | undefined;
  class?: string;
  children: ComponentChildren;
}) {
  return (
    <div class={className}>
      <label for={id}>{label}</label>
      {children}
      {help && (
        <p class="small" id={`${id}-help`}>
          {help}
        </p>
      )}
      {fault && (
        <p class="field-fault" id={`${id}-fault`} role="alert">
          {fault}
        </p>
      )}
    </div>
  );
}
