import { expect, test } from 'vitest';
import { createSaveTracker, type SaveState } from '../../../src/book/store/save-state.ts';

function watched() {
  const saving = createSaveTracker();
  const line: SaveState['state'][] = [];
  saving.subscribe(({ state }) => line.push(state));
  return { saving, line };
}

test('says saved only while nothing is under way', () => {
  const { saving, line } = watched();
  const [first, second] = [saving.begin('x'), saving.begin('y')];
  first.durable();
  expect(saving.now.state).toBe('saving');
  second.durable();
  second.durable();
  expect(line).toEqual(['saved', 'saving', 'saved']);
});

test('a failure stays through other successes, until that entry is saved', () => {
  const { saving } = watched();
  saving.begin('x').failed({ code: 'disk-full' });
  saving.begin('y').durable();
  expect(saving.now).toEqual({ state: 'not saved', fault: { code: 'disk-full' } });
  const again = saving.begin('x');
  expect(saving.now.state).toBe('not saved');
  again.durable();
  expect(saving.now.state).toBe('saved');
});

test('a failure ends when the painter gives the entry up', () => {
  const { saving, line } = watched();
  saving.begin('x').failed({ code: 'disk-full' });
  saving.forget('x');
  expect(line).toEqual(['saved', 'saving', 'not saved', 'saved']);
});

test('nothing to save after all is no failure', () => {
  const { saving, line } = watched();
  saving.begin('x').dropped();
  expect(line).toEqual(['saved', 'saving', 'saved']);
});

test('a listener that left hears nothing more', () => {
  const saving = createSaveTracker();
  const heard: string[] = [];
  saving.subscribe(({ state }) => heard.push(state))();
  saving.begin('x');
  expect(heard).toEqual(['saved']);
});
