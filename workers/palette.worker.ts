import { serve } from './jobs.ts';
import { type PaletteAnswer, type PaletteJob, planned } from './palette.ts';

serve<PaletteJob, PaletteAnswer, number>(self, planned);
