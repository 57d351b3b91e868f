/**
 * Mixing of two display colours that already stand side by side, as light. This is for soft
 * edges in a drawing, never a prediction of paint: colours arrive finished, as #rrggbb.
 */
const toLight = (byte: number) => {
  const c = byte / 255;
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
};
const toByte = (light: number) => {
  const c = light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055;
  return Math.round(Math.min(1, Math.max(0, c)) * 255);
};

const channels = (hex: string) => {
  const n = /^#[0-9a-f]{6}$/i.test(hex) ? Number.parseInt(hex.slice(1), 16) : 0x808080;
  return [(n >> 16) & 255, (n >> 8) & 255, n & 255] as const;
};

/** The light of `from` and `to` added, `share` (0…1) of it from `to`. Anything not #rrggbb is mid-grey. */
export function blend(from: string, to: string, share: number): string {
  const a = channels(from);
  const b = channels(to);
  const mixed = [0, 1, 2].map((i) =>
    toByte(toLight(a[i] ?? 0) * (1 - share) + toLight(b[i] ?? 0) * share),
  );
  return `#${mixed.map((v) => v.toString(16).padStart(2, '0')).join('')}`;
}

/** Relative luminance 0…1 of a display colour (sRGB weights), to set dark words on light and back. */
export function brightness(hex: string): number {
  const [r, g, b] = channels(hex);
  return 0.2126 * toLight(r) + 0.7152 * toLight(g) + 0.0722 * toLight(b);
}

/** Black or white words, whichever reads better upon this colour. */
export const inkUpon = (hex: string) => (brightness(hex) > 0.18 ? '#161616' : '#f4f4f4');
