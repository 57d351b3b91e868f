import { serve } from './job-protocol.ts';
import { type PaletteAnswer, type PaletteJob, runPaletteJob } from './palette.ts';

serve<PaletteJob, PaletteAnswer, number>(self, runPaletteJob);
