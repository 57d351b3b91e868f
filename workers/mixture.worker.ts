import { serve } from './jobs.ts';
import { findAll, type MixtureJob, type MixtureNews, type MixtureResult } from './mixture.ts';

serve<MixtureJob, MixtureResult, MixtureNews>(self, findAll);
