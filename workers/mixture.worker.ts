import { serve } from './jobs.ts';
import { doWork, type MixtureJob, type MixtureNews, type MixtureResult } from './mixture.ts';

serve<MixtureJob, MixtureResult, MixtureNews>(self, doWork);
