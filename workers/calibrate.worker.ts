import {
  type CalibrateJob,
  type CalibrateNews,
  doCalibrate,
  type Fit,
  type Read,
} from './calibrate.ts';
import { serve } from './jobs.ts';

serve<CalibrateJob, Read | Fit, CalibrateNews>(self, doCalibrate);
