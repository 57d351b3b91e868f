import { type CopyAnswer, type CopyJob, type CopyNews, copyJobs } from './copy.ts';
import { serve } from './job-protocol.ts';

serve<CopyJob, CopyAnswer, CopyNews>(self, copyJobs());
