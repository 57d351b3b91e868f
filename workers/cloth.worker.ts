import { type Garment, type Shapes, shapesOf } from '../src/ui/drawn/paint.ts';
import { serve } from './jobs.ts';

serve<Garment, Shapes, never>(self, (garment) => ({ value: shapesOf(garment) }));
