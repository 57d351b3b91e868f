import type { DownsampledRows } from '../src/photo/work.ts';
import { runOnSecondThread, type SecondThreadJob } from './half.ts';
import { serve } from './jobs.ts';

serve<SecondThreadJob, DownsampledRows | Uint8Array[], never>(self, runOnSecondThread);
