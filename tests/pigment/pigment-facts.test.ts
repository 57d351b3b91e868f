import { describe, expect, test } from 'vitest';
import { BUILT_IN_CURVES } from '../../src/pigment/built-in-curves.ts';
import sentences from '../../src/pigment/data/words.json' with { type: 'json' };
import {
  PIGMENTS,
  PROVENANCE_WORDS,
  pairWarningOf,
  pigmentOf,
  standInsOf,
} from '../../src/pigment/pigment-facts.ts';
import { describeShared, readShared } from '../shared.ts';

describe('facts', () => {
  test('there are facts of every pigment with a curve, under one name', () => {
    expect(BUILT_IN_CURVES.length).toBeGreaterThanOrEqual(26);
    for (const { id, name } of BUILT_IN_CURVES) {
      expect(pigmentOf(id)?.name).toBe(name);
      expect(pigmentOf(id)?.curve).toMatch(/\.$/);
    }
    expect(pigmentOf('moss')).toBeNull();
  });

  test('every figure carries a provenance word that can be spelt out', () => {
    for (const facts of PIGMENTS) {
      const { colourIndex, opacity, strength, drying, lightfast, hazard, mixing, standIns } = facts;
      const figures = [facts.density, facts.oil, facts.index].filter((one) => one !== null);
      for (const { status } of [
        ...figures,
        colourIndex,
        opacity,
        strength,
        drying,
        lightfast,
        hazard,
        mixing,
        standIns,
      ])
        expect(PROVENANCE_WORDS[status]).toBeTypeOf('string');
      for (const figure of [facts.density, facts.oil])
        if (figure !== null) expect(figure.source).not.toBe('');
    }
  });

  test('sentences are whole, and no hazard or caution is left unused', () => {
    const used = new Set<string>();
    for (const facts of PIGMENTS) {
      for (const text of [facts.hue, facts.use, facts.lightfast.note, facts.mixing.note])
        expect(text).toMatch(/^[A-Z].*\.$/);
      expect(facts.hazard.sentence).toMatch(/\.$/);
      expect(facts.hazard.caution).toMatch(/\.$/);
      used.add(facts.hazard.sentence).add(facts.hazard.caution);
    }
    for (const text of [...Object.values(sentences.hazards), ...Object.values(sentences.cautions)])
      expect(used.has(text)).toBe(true);
  });

  test('lead, mercury and arsenic say so', () => {
    const counted = { lead: 0, mercury: 0, arsenic: 0 };
    for (const facts of PIGMENTS) {
      const lead = /lead/i.test(facts.chemistry);
      if (lead || /Mercury/.test(facts.chemistry)) expect(facts.hazard.level).toBe('toxic');
      if (lead) expect(facts.hazard.sentence).toContain('lead compound');
      const arsenic = /[Aa]rsenic/.test(facts.chemistry);
      if (arsenic) expect(facts.hazard.level).toBe('very_toxic');
      counted.lead += Number(lead);
      counted.mercury += Number(/Mercury/.test(facts.chemistry));
      counted.arsenic += Number(arsenic);
    }
    // Lead white, lead-tin and Naples yellow, massicot, red lead; vermilion; orpiment and realgar.
    expect(counted).toEqual({ lead: 5, mercury: 1, arsenic: 2 });
    expect(pigmentOf('vermilion')!.hazard.sentence).toContain('mercury');
  });

  test('warnings name pigments that exist and hold both ways', () => {
    let counted = 0;
    for (const facts of PIGMENTS)
      for (const other of [...facts.avoid, ...facts.careWith]) {
        if (other === 'cadmium_yellow') continue; // named in old warnings, not stocked
        expect(pigmentOf(other)).not.toBeNull();
        const pair = pairWarningOf(facts.id, other)!;
        expect(pair.why.length).toBeGreaterThan(0);
        expect(pairWarningOf(other, facts.id)?.severity).toBe(pair.severity);
        expect(pairWarningOf(other, facts.id)!.why.toSorted()).toEqual(pair.why.toSorted());
        counted++;
      }
    expect(counted).toBeGreaterThan(20);
  });

  test('stand-ins are of this shelf and none of them is toxic', () => {
    expect(standInsOf('vermilion').map(({ id }) => id)).toEqual(['si_pr254']);
    expect(standInsOf('lead_tin_yellow').map(({ id }) => id)).toEqual([
      'si_pbr24',
      'si_py53',
      'si_py184',
    ]);
    for (const { id } of PIGMENTS)
      for (const standIn of standInsOf(id)) expect(standIn.hazard.level).toMatch(/low|caution/);
  });
});

// The sheet's sentences are its own; ours are ours.
describeShared('sentences', () => {
  const RUN = 5;
  const words = (text: string) =>
    text
      .toLowerCase()
      .replace(/[^a-z0-9\s]/g, '')
      .split(/\s+/)
      .filter((word) => word !== '');

  test(`no run of ${RUN} words is taken over from the handbook sheet`, () => {
    const theirs = ` ${words(readShared('reference/pigment-facts.md')).join(' ')} `;
    const ours = [
      ...PIGMENTS.flatMap((facts) => [
        facts.hue,
        facts.use,
        facts.lightfast.note,
        facts.mixing.note,
      ]),
      ...Object.values(sentences.hazards),
      ...Object.values(sentences.cautions),
    ];
    const taken = ours.flatMap((text) => {
      const run = words(text);
      return run
        .slice(RUN - 1)
        .map((_, i) => run.slice(i, i + RUN).join(' '))
        .filter((each) => theirs.includes(` ${each} `));
    });
    expect(taken).toEqual([]);
  });
});
