import { type Shaped, type ShapingJob, shaped } from './drawing.ts';
import { serve } from './jobs.ts';

serve<ShapingJob, Shaped, never>(self, (job) => ({ value: shaped(job) }));
