import { describe, expect, test } from 'vitest';
import { chroma, hueDeg } from '../../src/colour/lab.ts';
import { pasteOf } from '../../src/pigment/paste.ts';
import { pigmentOf } from '../../src/pigment/pigment-facts.ts';
import { mixed } from '../tools/pigment-mixing.ts';

/** Volumes of paste that hold so many grams of dry pigment. */
const volume = (id: string, grams: number) => {
  const { density, oil } = pigmentOf(id)!;
  const paste = pasteOf({ density: density!.value, oil: oil!.value });
  return (grams * (1 + oil!.value / 100)) / paste.density;
};
const inLeadWhite = (id: string, white: number) =>
  mixed({ [id]: volume(id, 1), lead_white: volume('lead_white', white) });

// Yardsticks by weight as the handbook sheet quotes them: Jennings (Prussian blue), Henley (blacks).
describe('yardsticks by weight in lead white', () => {
  test('1 part Prussian blue in 100 is a distinct sky blue', () => {
    const sky = inLeadWhite('prussian_blue', 100);
    expect(sky[0]).toBeGreaterThan(55);
    expect(chroma(sky)).toBeGreaterThan(15);
    expect(hueDeg(sky)).toBeGreaterThan(220);
    expect(hueDeg(sky)).toBeLessThan(275);
  });
  test('1 part bone black in 100 is a pure grey', () => {
    const grey = inLeadWhite('bone_black', 100);
    expect(grey[0]).toBeGreaterThan(50);
    expect(grey[0]).toBeLessThan(80);
    expect(chroma(grey)).toBeLessThan(3);
  });
  test('1 part lamp black in 50 is the colour of lead', () => {
    const lead = inLeadWhite('lamp_black', 50);
    expect(lead[0]).toBeGreaterThan(30);
    expect(lead[0]).toBeLessThan(55);
    expect(lead[2]).toBeLessThan(-2);
  });
});
