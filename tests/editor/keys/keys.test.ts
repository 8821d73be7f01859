import { describe, expect, it } from 'vitest';
import { KEYS, keyAct } from '../../../src/editor/keys/keys.ts';

const press = (key: string, more: Partial<Record<'ctrlKey' | 'metaKey' | 'shiftKey' | 'altKey', boolean>> = {}) =>
  keyAct({ key, ctrlKey: false, metaKey: false, shiftKey: false, altKey: false, ...more }, ['A', 'B']);

describe('keys of the bench', () => {
  it.each([
    ['z', { ctrlKey: true }, { kind: 'undo' }],
    ['Z', { ctrlKey: true, shiftKey: true }, { kind: 'redo' }],
    ['z', { metaKey: true }, { kind: 'undo' }],
    ['b', {}, { kind: 'yarn', letter: 'B' }],
    ['?', { shiftKey: true }, { kind: 'keys' }],
    ['Escape', {}, { kind: 'point' }],
    ['c', {}, null],
    ['b', { ctrlKey: true }, null],
    ['b', { altKey: true }, null],
    ['Enter', {}, null],
  ])('%s %j', (key, more, act) => {
    expect(press(key, more)).toEqual(act);
  });
});

describe('the list of keys', () => {
  it('says each key of a place once', () => {
    for (const { keys } of KEYS) expect(new Set(keys.map((each) => each.keys)).size).toBe(keys.length);
  });

  it('has the keys of the chart and of the cells of a motif', () => {
    expect(KEYS.map(({ place }) => place)).toEqual(['Everywhere', 'On the chart', 'On the cells of a motif']);
    expect(KEYS[2]!.keys.map(({ keys }) => keys)).toContain('1 2 3 4 5');
  });
});
