import { serve } from './jobs.ts';
import { type PaletteAnswer, type PaletteJob, runPaletteJob } from './palette.ts';

serve<PaletteJob, PaletteAnswer, number>(self, runPaletteJob);
