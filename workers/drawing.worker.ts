import { computeShapes, type Shaped, type ShapingJob } from './drawing.ts';
import { serve } from './jobs.ts';

serve<ShapingJob, Shaped, never>(self, (job) => ({ value: computeShapes(job) }));
