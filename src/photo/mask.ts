/** What is looked at: 1 kept, 0 rubbed out. Any size; it covers the whole photograph. */
export interface Mask {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}
