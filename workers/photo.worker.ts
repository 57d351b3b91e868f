import { serve } from './job-protocol.ts';
import { editPhotoManually, type HandResult, type ManualEditJob } from './manual-edit.ts';
import { type PhotoJob, type PhotoNews, type PhotoResult, readPhoto } from './photo.ts';
import { type WarmUpJob, warmUp } from './warm-up.ts';

serve<PhotoJob | ManualEditJob | WarmUpJob, PhotoResult | HandResult | null, PhotoNews>(
  self,
  (job, tell) => {
    if (!('act' in job)) return readPhoto(job, tell);
    return job.act === 'rehearse' ? warmUp() : editPhotoManually(job);
  },
);
