import { serve } from './job-protocol.ts';
import {
  executeMixtureJob,
  type MixtureJob,
  type MixtureNews,
  type MixtureResult,
} from './mixture.ts';

serve<MixtureJob, MixtureResult, MixtureNews>(self, executeMixtureJob);
