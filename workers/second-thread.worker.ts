import type { DownsampledRows } from '../src/photo/downsample.ts';
import { serve } from './job-protocol.ts';
import { runOnSecondThread, type SecondThreadJob } from './second-thread.ts';

serve<SecondThreadJob, DownsampledRows | Uint8Array[], never>(self, runOnSecondThread);
