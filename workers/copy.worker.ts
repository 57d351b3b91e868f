import { type CopyAnswer, type CopyJob, type CopyNews, copyWork } from './copy.ts';
import { serve } from './jobs.ts';

serve<CopyJob, CopyAnswer, CopyNews>(self, copyWork());
