import { type DraperyJob, type DraperyNews, drapeAll } from './drapery.ts';
import { serve } from './jobs.ts';

serve<DraperyJob, null, DraperyNews>(self, drapeAll);
