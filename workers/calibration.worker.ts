import {
  type CalibrateJob,
  type CalibrateNews,
  type Fit,
  type Read,
  runCalibrationJob,
} from './calibration.ts';
import { serve } from './job-protocol.ts';

serve<CalibrateJob, Read | Fit, CalibrateNews>(self, runCalibrationJob);
