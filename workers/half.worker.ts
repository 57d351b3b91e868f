import type { WorkPart } from '../src/photo/work.ts';
import { type HalfJob, half } from './half.ts';
import { serve } from './jobs.ts';

serve<HalfJob, WorkPart | Uint8Array[], never>(self, half);
