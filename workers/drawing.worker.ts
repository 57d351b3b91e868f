import { computeShapes, type Shaped, type ShapingJob } from './drawing.ts';
import { serve } from './job-protocol.ts';

serve<ShapingJob, Shaped, never>(self, (job) => ({ value: computeShapes(job) }));
