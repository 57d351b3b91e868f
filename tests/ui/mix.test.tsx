import 'fake-indexeddb/auto';
import { cleanup, fireEvent, render, screen, within } from '@testing-library/preact';
import { afterAll, afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import type { Entry } from '../../src/book/schema/record.ts';
import type { Lab } from '../../src/colour/lab.ts';
import { LADDER_STEPS } from '../../src/harmony/harmony.ts';
import { DEFAULT_PREFERENCES } from '../../src/mixture/mixing-preferences.ts';
import { starterShelf, starterStock } from '../../src/pigment/starter-shelf.ts';
import type { OwnPigment, Stock } from '../../src/pigment/stock.ts';
import type { MixtureJob } from '../../workers/mixture.ts';
import { executeMixtureJob } from '../../workers/mixture.ts';

// No worker here: the same work, done at once. The page is told of it a moment later, as ever.
vi.mock('../../src/ui/state/worker-jobs.ts', () => ({
  isAbort: (error: unknown) => error instanceof DOMException && error.name === 'AbortError',
  runMixtureJob: async (kind: string, takes: object) => {
    await Promise.resolve();
    return executeMixtureJob({ ...takes, kind } as MixtureJob, () => {}).value;
  },
}));

// Nothing has a place on a page that is not laid out: all of it is looked at.
vi.stubGlobal('IntersectionObserver', undefined);

const { storedShelf, shelf, notice } = await import('../../src/ui/state/studio.ts');
const { harmonyColours, isMappedToShelf, selectedIndex, answers, undoHarmonyChange } = await import(
  '../../src/ui/state/harmony/current-harmony.ts'
);
const { SelectedColour } = await import('../../src/ui/features/harmony/SelectedColour.tsx');
const { VariantRows } = await import('../../src/ui/features/harmony/VariantRows.tsx');
const { mixedVariants } = await import('../../src/ui/state/harmony/variant-jobs.ts');
const { mixturesInUse } = await import('../../src/ui/state/harmony/mixtures-in-use.ts');
const { PreferencesSummary, PreferencesForm } = await import(
  '../../src/ui/features/harmony/PreferencesForm.tsx'
);
const { HarmonyMixingTools } = await import('../../src/ui/features/harmony/MixtureTools.tsx');
const { OutOfReach } = await import('../../src/ui/features/harmony/OutOfReach.tsx');
const { changePreferences, undoableDecision, resetDecisions, undoDecision, mixingPreferences } =
  await import('../../src/ui/state/harmony/mixing-decisions.ts');

/** A colour as a photograph gave it, as it is to be mixed. */
const gathered = (name: string, lab: Lab) => ({
  gathered: {
    name,
    lab,
    share: 0.5,
    accent: false,
    ladder: LADDER_STEPS.map((step) => ({ step, lab, share: 1 / 6 })),
  },
  taken: [],
});
const shows = (...labs: Lab[]) => {
  isMappedToShelf.value = false;
  selectedIndex.value = 0;
  harmonyColours.value = labs.map((lab, i) => gathered(`colour ${i + 1}`, lab));
};
const stockOf = (pigments: readonly string[], more: Partial<Stock> = {}): Stock => {
  const all = starterStock();
  const entries = all.entries.filter(({ pigment }) => pigments.includes(pigment));
  const white = entries.find(({ id }) => id === all.white)?.id ?? null;
  return { ...all, entries, white, ...more };
};
const stock = (value: Stock | null) => {
  storedShelf.value =
    value && ({ body: { stock: value }, clock: 'x' } as unknown as Entry<'shelf'>);
};
const mixed = () =>
  vi.waitFor(() => {
    expect(answers.value).toHaveLength(harmonyColours.value.length);
    expect(answers.value.every(Boolean)).toBe(true);
  }, 20_000);
const opened = (container: Element, summary: string | RegExp) => {
  const details = within(container as HTMLElement)
    .getByText(summary)
    .closest('details')!;
  details.open = true;
  fireEvent(details, new Event('toggle'));
};

beforeEach(() => {
  stock(null);
  notice.value = null;
  harmonyColours.value = [];
  if (mixingPreferences.value !== DEFAULT_PREFERENCES) changePreferences(DEFAULT_PREFERENCES, '');
  resetDecisions();
});
afterEach(cleanup);
afterAll(() => {
  vi.unstubAllGlobals();
});

describe('what is asked of all mixtures', () => {
  test('two wishes that exclude each other are named, and one step goes back', async () => {
    const { container } = render(
      <>
        <PreferencesForm />
        <PreferencesSummary />
      </>,
    );
    opened(container, 'What may go into a pile');
    fireEvent.change(await screen.findByLabelText('Leave out by danger'), {
      target: { value: 'toxic' },
    });
    changePreferences({ mustHold: ['lead_white'] }, 'lead white in every pile');
    await screen.findByText(/Lead white is asked for in every pile, and left out as well/);
    fireEvent.click(screen.getByText('Undo: lead white in every pile'));
    await vi.waitFor(() => expect(screen.queryByText(/left out as well/)).toBeNull(), 20_000);
    expect(mixingPreferences.value.hazard).toBe('toxic');
  });

  test('a harmony comes with its own wish; without one the sitting’s holds again', () => {
    changePreferences({ noBlack: true }, 'no black');
    resetDecisions([], { ...DEFAULT_PREFERENCES, most: 2 });
    expect(mixingPreferences.value).toMatchObject({ most: 2, noBlack: false });
    resetDecisions();
    expect(mixingPreferences.value).toMatchObject({ most: 4, noBlack: true });
    changePreferences({ noBlack: false }, 'black too');
    undoDecision();
    expect([mixingPreferences.value.noBlack, undoableDecision.value]).toEqual([true, null]);
  });
});

test('wishes that no pile meets are named where further pigments are looked for', async () => {
  const { container } = render(<OutOfReach target={[50, 60, -50]} />);
  opened(container, 'Out of reach: what to keep');
  changePreferences({ mustHold: ['raw_umber'], leaveOut: ['raw_umber'] }, 'raw umber');
  fireEvent.click(await screen.findByText('Which pigment would reach it?'));
  await vi.waitFor(() => expect(notice.value).not.toBeNull(), 20_000);
  expect(notice.value).toEqual({
    text: 'Raw umber is asked for in every pile, and left out as well. Give up one of the two wishes.',
    bad: true,
  });
  expect(screen.getByText('Which pigment would reach it?')).toBeTruthy();
});

test('the fewest pigments: the variants too, what must be in every pile, and the palette is taken', async () => {
  shows([62, 10, 24], [50, 4, 10]);
  changePreferences({ mustHold: ['raw_umber'] }, 'raw umber in every pile');
  const { container } = render(
    <>
      <HarmonyMixingTools />
      <PreferencesSummary />
    </>,
  );
  opened(container, 'The fewest pigments for all of it');
  fireEvent.change(await screen.findByLabelText('What they must mix'), {
    target: { value: 'small' },
  });
  fireEvent.click(screen.getByText('Find the fewest'));
  await screen.findByText(/(is|are) enough: .*raw umber/);
  fireEvent.click(screen.getByText(/^Mix with these \d+ only$/));
  await screen.findByText(/Asked of all mixtures:/);
  expect(mixingPreferences.value.mustHold).toEqual(['raw_umber']);
  expect(mixingPreferences.value.only).toContain('raw_umber');
});

describe('variants', () => {
  const fold = (name: string) => screen.findByRole('button', { name: new RegExp(`^${name}`) });

  test('one beside its origin, with what changes in the pile; it takes the place, and back', async () => {
    shows([62, 10, 24], [50, 4, 10]);
    render(<VariantRows />);
    await mixed();
    await vi.waitFor(() => expect(mixedVariants.value?.size).toBe(18), 20_000);
    fireEvent.click(await fold('duller, clearly'));
    await screen.findByText(/To the eye: .*In the pile: /);
    const made = mixedVariants.value!.get('duller-middle')!;
    fireEvent.click(screen.getByText('Take this variant'));
    const taken = [{ way: 'duller', amount: 'middle' }];
    await vi.waitFor(() => expect(harmonyColours.value[0]!.taken).toEqual(taken), 20_000);
    await mixed();
    // It keeps the pile that was shown, though the search would begin anew.
    expect(mixturesInUse.value[0]!.parts).toEqual(made.mixture.parts);
    undoHarmonyChange();
    expect(harmonyColours.value[0]!.taken).toEqual([]);
  });

  test('the whole harmony at once, colour by colour, and one step back', async () => {
    shows([62, 10, 24], [50, 4, 10]);
    render(<VariantRows />);
    await mixed();
    await vi.waitFor(() => expect(mixedVariants.value).not.toBeNull(), 20_000);
    fireEvent.click(await fold('lighter, a little'));
    fireEvent.click(await screen.findByText('See the whole harmony so'));
    await screen.findByText('The whole harmony, lighter, a little');
    await screen.findByText('The shelf makes the change in every colour.');
    expect(screen.getAllByText(/In the pile: /)).toHaveLength(3);
    fireEvent.click(screen.getByText('Take it for the whole harmony'));
    const lighter = [{ way: 'lighter', amount: 'small' }];
    expect(harmonyColours.value.map(({ taken }) => taken)).toEqual([lighter, lighter]);
    await vi.waitFor(() => expect(screen.queryByText(/The whole harmony/)).toBeNull(), 20_000);
    undoHarmonyChange();
    expect(harmonyColours.value.map(({ taken }) => taken)).toEqual([[], []]);
  });

  test('what the shelf does not do is said and marked, and cannot be taken', async () => {
    stock(stockOf(['lead_white', 'red_earth']));
    shows([50, 22, 18]);
    render(<VariantRows />);
    await mixed();
    await vi.waitFor(() => expect(mixedVariants.value).not.toBeNull(), 20_000);
    const none = [...mixedVariants.value!.values()].find(({ granted }) => granted === 'nothing')!;
    const words = { small: 'a little', middle: 'clearly', large: 'much' }[none.amount];
    const button = await fold(`${none.way}, ${words}`);
    expect(button.textContent).toMatch(/out of reach/);
    fireEvent.click(button);
    await screen.findByText(/These pigments make it no|there the turn ends/);
    expect(screen.queryByText('Take this variant')).toBeNull();
  });
});

describe('alternatives', () => {
  const own: OwnPigment = {
    ...{ id: 'own:brick', name: 'Brick dust', synonyms: [], family: 'red', note: '' },
    ...{ hazard: 'toxic', caution: 'Never dry.', density: null, oil: null },
    curve: (() => {
      const { paint } = starterShelf().paints.find(({ pigment }) => pigment === 'red_earth')!;
      return { known: 'measured' as const, K: [...paint.K], S: [...paint.S] };
    })(),
  };

  test('say what the studio knows of its own pigment', async () => {
    const base = stockOf(['lead_white', 'yellow_ochre']);
    const entry = { ...base.entries[0]!, id: 'entry-own', pigment: own.id };
    stock({ ...base, own: [own], entries: [...base.entries, entry] });
    expect(shelf.value.paints.map(({ pigment }) => pigment)).toContain(own.id);
    shows([45, 22, 20]);
    const { container } = render(<SelectedColour />);
    await mixed();
    opened(container, /other ways? to mix it/i);
    await vi.waitFor(() => expect(container.textContent).toMatch(/Brick dust \(toxic\)/), 20_000);
    expect(container.textContent).not.toMatch(/more than a dust/);
    expect(container.textContent).toMatch(/the weakest of those that are known is yellow ochre/);
  });
});

describe('on odd shelves the bench still answers', () => {
  const lab: Lab = [70, 12, 20];
  const answered = async (value: Stock, ...labs: Lab[]) => {
    stock(value);
    shows(...labs);
    const { container } = render(<SelectedColour />);
    await mixed();
    await vi.waitFor(() => expect(container.querySelector('.piles')).not.toBeNull(), 20_000);
    expect(notice.value).toBeNull();
    return container;
  };

  test('one pigment', async () => {
    const bench = await answered(stockOf(['red_earth']), lab);
    expect(bench.textContent).toMatch(/on the shelf/);
    opened(bench, /other ways? to mix it/i);
    await vi.waitFor(
      () => expect(bench.textContent).toMatch(/no other way to come as near/),
      20_000,
    );
  });

  test('no white', async () => {
    const bench = await answered(stockOf(['red_earth', 'yellow_ochre', 'raw_umber']), [95, 0, 2]);
    expect(bench.textContent).toMatch(/lighter than any/);
  });

  test('a lake that hardly scatters is named as a film', async () => {
    const clear = { ...stockOf(['lead_white', 'madder_lake']) };
    const { paint } = starterShelf().paints.find(({ pigment }) => pigment === 'madder_lake')!;
    const curve = { known: 'measured' as const, K: [...paint.K], S: paint.S.map(() => 0) };
    const entries = clear.entries.map((one) =>
      one.pigment === 'madder_lake' ? { ...one, curve: { ...curve, S: [...curve.S] } } : one,
    );
    const bench = await answered({ ...clear, entries }, [24, 20, 5]);
    expect(bench.querySelector('.piles')?.textContent).toMatch(/alone it is a glaze/);
    opened(bench, /other ways? to mix it/i);
    await vi.waitFor(() => expect(bench.textContent).toMatch(/alone it is a glaze/), 20_000);
  });
});
