import { byHand, type HandJob, type HandResult } from './hand.ts';
import { serve } from './jobs.ts';
import { type PhotoJob, type PhotoNews, type PhotoResult, readPhoto } from './photo.ts';

serve<PhotoJob | HandJob, PhotoResult | HandResult, PhotoNews>(self, (job, tell) =>
  'act' in job ? byHand(job) : readPhoto(job, tell),
);
