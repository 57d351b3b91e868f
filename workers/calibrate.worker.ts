import {
  type CalibrateJob,
  type CalibrateNews,
  type Fit,
  type Read,
  runCalibrationJob,
} from './calibrate.ts';
import { serve } from './jobs.ts';

serve<CalibrateJob, Read | Fit, CalibrateNews>(self, runCalibrationJob);
