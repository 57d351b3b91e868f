import { type ShapingJob, shaped } from './drawing.ts';

self.onmessage = ({ data }: MessageEvent<ShapingJob>) => self.postMessage(shaped(data));
