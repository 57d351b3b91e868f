import { type CopyAnswer, type CopyJob, type CopyNews, copyJobs } from './copy.ts';
import { serve } from './jobs.ts';

serve<CopyJob, CopyAnswer, CopyNews>(self, copyJobs());
