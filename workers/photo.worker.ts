import { byHand, type HandJob, type HandResult } from './hand.ts';
import { serve } from './jobs.ts';
import { type PhotoJob, type PhotoNews, type PhotoResult, readPhoto } from './photo.ts';
import { type RehearsalJob, rehearse } from './rehearsal.ts';

serve<PhotoJob | HandJob | RehearsalJob, PhotoResult | HandResult | null, PhotoNews>(
  self,
  (job, tell) => {
    if (!('act' in job)) return readPhoto(job, tell);
    return job.act === 'rehearse' ? rehearse() : byHand(job);
  },
);
