import { type PhotoJob, type PhotoNews, type PhotoResult, readPhoto } from './photo.ts';
import { serve } from './jobs.ts';

serve<PhotoJob, PhotoResult, PhotoNews>(self, readPhoto);
