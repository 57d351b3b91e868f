import { serve } from './jobs.ts';
import { type PhotoJob, type PhotoNews, type PhotoResult, readPhoto } from './photo.ts';

serve<PhotoJob, PhotoResult, PhotoNews>(self, readPhoto);
