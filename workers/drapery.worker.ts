import { type DraperyJob, type DraperyNews, drapeAll } from './drapery.ts';
import { serve } from './job-protocol.ts';

serve<DraperyJob, null, DraperyNews>(self, drapeAll);
