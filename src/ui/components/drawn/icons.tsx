import type { ComponentChildren } from 'preact';
import { useId } from 'preact/hooks';

interface IconProps {
  /** Size in px; default 24. */
  readonly size?: number | undefined;
  /** Accessible name of an icon without text beside it; otherwise it is decorative. */
  readonly label?: string | undefined;
  readonly class?: string | undefined;
}

/** Common SVG of all icons: 24 × 24, line width 1.7, round ends, in the colour of the text. */
function IconFrame({
  children,
  size = 24,
  label,
  class: name,
}: IconProps & { children: ComponentChildren }) {
  const id = useId();
  return (
    // biome-ignore lint/a11y/noSvgWithoutTitle: beside words an icon says nothing; alone it has its title
    <svg
      class={name}
      width={size}
      height={size}
      viewBox="0 0 24 24"
      fill="none"
      stroke="currentColor"
      stroke-width="1.7"
      stroke-linecap="round"
      stroke-linejoin="round"
      role={label ? 'img' : undefined}
      aria-labelledby={label ? id : undefined}
      aria-hidden={label ? undefined : 'true'}
    >
      {label ? <title id={id}>{label}</title> : null}
      {children}
    </svg>
  );
}

/** A kingcup beside a path. */
export const WalkIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M12.9 6.1A2.25 2.25 0 1 1 16.3 6.1A2.25 2.25 0 1 1 17.4 9.3A2.25 2.25 0 1 1 14.6 11.3A2.25 2.25 0 1 1 11.8 9.3A2.25 2.25 0 1 1 12.9 6.1Z" />
    <circle cx="14.6" cy="8.4" r="1" />
    <path d="M14.6 14.6c.2 2.3-.1 4.3-.8 6.4M14.7 18.2c1.3-1.9 3.4-2.5 5.7-1.9-.6 1.9-2.8 3-5.9 2.6" />
    <path d="M2.5 21c4.4-.6 6-2.3 4.5-4.4-1.3-1.8-2-3.3.2-4.9" />
  </IconFrame>
);

/** Overlapping cloths, each as wide as its share. */
export const HarmonyIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <circle cx="8" cy="3.8" r="1.2" />
    <path d="M7.2 4.9C6.8 10 3.6 13.5 2.5 20c1.3-.8 2.3-.7 3.2.2.9.9 2.1.9 3-.1.9 1 2.2 1 3.1.1.8-.8 1.4-.9 2.2-.5-.9-6-4.6-9.5-5.2-14.8" />
    <path d="M7.6 9.5c-.2 3.2-1.2 6-1.5 8.7M8.7 10.5c.6 2.5 1.6 4.8 1.9 7.6" />
    <circle cx="17" cy="6.8" r="1.1" />
    <path d="M16.3 7.8c-.4 2.6-1.6 4.7-3 6.9M14.7 18c.8.7 1.7.7 2.5-.1.7.8 1.7.9 2.4.1.7-.6 1.2-.6 1.9-.2-.4-4.2-3.3-6.6-3.8-10" />
    <path d="M17.2 11.5c0 1.8-.2 3.2-.4 4.6" />
  </IconFrame>
);

/** Cloth falling in folds from one peg. */
export const DraperyIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <circle cx="12" cy="3.8" r="1.3" />
    <path d="M11 4.9c-.7 4.6-4.3 8.4-5.5 15.3 1.4-1 2.6-.9 3.6.3.9 1 2.4 1 3.2-.2.9 1.1 2.2 1.1 3 0 1-1.1 2.1-1 3.2-.1-1.2-6.9-4.8-10.7-5.5-15.3" />
    <path d="M11.5 8.5c-.3 4-1.8 7-2.3 11M12.5 8.5c.5 3.5 2.2 6.5 2.7 10.5" />
  </IconFrame>
);

/** A palette with its thumb hole and three piles. */
export const PaletteIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M12.3 4c5.3 0 9.2 3.3 9.2 7.6 0 4.6-4.3 8.4-9.8 8.4-2.3 0-3-1.2-2.4-2.7.6-1.4-.2-2.3-1.8-2.3H5.4c-1.9 0-2.9-1.1-2.9-2.9C2.5 7.6 6.8 4 12.3 4Z" />
    <ellipse cx="6.9" cy="11.4" rx="1.5" ry="1.2" />
    <path d="M10.2 8c.3-.9 1.8-.9 2 0M15.3 9c.4-.9 1.9-.7 2 .2M16.8 13.7c.4-.8 1.8-.6 1.8.3" />
  </IconFrame>
);

/** A bound book with a ribbon. */
export const BookIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M5 18.7V5.3C5 4 6 3 7.3 3H19v14.5H6.8c-1.2 0-1.8.8-1.8 1.7S5.7 21 6.8 21H19" />
    <path d="M15.5 3v8l-1.9-1.5L11.7 11V3" />
  </IconFrame>
);

/** Take a photograph. */
export const CameraIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M3 8.8C3 7.8 3.7 7 4.7 7h3l1.5-2.5h5.6L16.3 7h3c1 0 1.7.8 1.7 1.8v8.7c0 .9-.7 1.5-1.6 1.5H4.6c-.9 0-1.6-.6-1.6-1.5Z" />
    <circle cx="12" cy="12.7" r="3.6" />
    <path d="M18 9.7h.1" />
  </IconFrame>
);

/** Choose an existing picture: one print before another. */
export const PictureIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M6.5 4.5H20c.6 0 1 .4 1 1v10.5" />
    <path d="M3 8.5h14c.6 0 1 .4 1 1V19c0 .6-.4 1-1 1H4c-.6 0-1-.4-1-1Z" />
    <path d="M3.5 17.5l4-4.2 3 3 2.2-2.1 4.8 4.3" />
    <path d="M13.5 11.7h.1" />
  </IconFrame>
);

/** The waste bin. */
export const BinIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M4.5 6.5h15M9.5 6.3V4.5c0-.6.4-1 1-1h3c.6 0 1 .4 1 1v1.8" />
    <path d="M6 6.7l1 12.6c.1.7.6 1.2 1.3 1.2h7.4c.7 0 1.2-.5 1.3-1.2l1-12.6" />
    <path d="M10.2 10.3l.3 6.4M13.8 10.3l-.3 6.4" />
  </IconFrame>
);

/** Add. */
export const AddIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M12 4.5v15M4.5 12h15" />
  </IconFrame>
);

/** Search. */
export const SearchIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <circle cx="10.5" cy="10.5" r="6.5" />
    <path d="M15.5 15.5l5 5" />
  </IconFrame>
);

/** Print. */
export const PrintIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M7 8.5V3.5h10v5" />
    <path d="M7 16.5H4.5c-.8 0-1.5-.6-1.5-1.4V10c0-.8.7-1.5 1.5-1.5h15c.8 0 1.5.7 1.5 1.5v5.1c0 .8-.7 1.4-1.5 1.4H17" />
    <path d="M7 13.5h10v7H7ZM17.5 11.3h.1" />
  </IconFrame>
);

/** Caution. */
export const CautionIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M12 3.5c.5 0 .9.3 1.2.8l7.9 14c.5.9-.1 2.2-1.2 2.2H4.1c-1.1 0-1.7-1.3-1.2-2.2l7.9-14c.3-.5.7-.8 1.2-.8Z" />
    <path d="M12 9.5v5M12 17.5v.1" />
  </IconFrame>
);

export const UpIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M5.5 14.6c2.4-2 4.4-4 6.5-6.7 2.1 2.7 4.1 4.7 6.5 6.7" />
  </IconFrame>
);

export const DownIcon = (props: IconProps) => (
  <IconFrame {...props}>
    <path d="M5.5 9.4c2.4 2 4.4 4 6.5 6.7 2.1-2.7 4.1-4.7 6.5-6.7" />
  </IconFrame>
);
