import {
  type CalibrateJob,
  type CalibrateNews,
  type FitResult,
  type Read,
  runCalibrationJob,
} from './calibration.ts';
import { serve } from './job-protocol.ts';

serve<CalibrateJob, Read | FitResult, CalibrateNews>(self, runCalibrationJob);
