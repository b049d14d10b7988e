// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { placeOf, readPlace } from '../../../renderer/router.ts';
import { keyName } from '../../../renderer/ui/key-name.ts';
import { sortRows } from '../../../renderer/ui/sort-rows.ts';
import { storedChoice } from '../../../renderer/ui/stored-choice.ts';

describe('addresses', () => {
  it('carry a line number with its slash there and back', () => {
    expect(placeOf('orders', '1042/2')).toBe('#/orders/1042%2F2');
    expect(readPlace(placeOf('orders', '1042/2')).path).toEqual(['orders', '1042/2']);
  });

  it('have a query after the path', () => {
    const { path, query } = readPlace('#/print/dispatch?machine=B1&days=2');
    expect(path).toEqual(['print', 'dispatch']);
    expect([query.get('machine'), query.get('days')]).toEqual(['B1', '2']);
  });

  it('may be empty', () => {
    expect(readPlace('').path).toEqual([]);
  });
});

describe('rows of a table', () => {
  const rows = [{ id: '1042/10' }, { id: '1042/2' }, { id: '998/1' }];
  const ids = (sorted: { id: string }[]) => sorted.map((row) => row.id);
  const by = (row: { id: string }) => row.id;

  it('sort texts the way people count', () => {
    expect(ids(sortRows(rows, by, false, by))).toEqual(['998/1', '1042/2', '1042/10']);
    expect(ids(sortRows(rows, by, true, by))).toEqual(['1042/10', '1042/2', '998/1']);
  });

  it('keep ties in the order of their ids, either way', () => {
    const same = () => 1;
    expect(ids(sortRows(rows, same, false, by))).toEqual(['998/1', '1042/2', '1042/10']);
    expect(ids(sortRows(rows, same, true, by))).toEqual(['998/1', '1042/2', '1042/10']);
  });
});

describe('the name of a key', () => {
  const press = (key: string, held: KeyboardEventInit = {}) =>
    keyName(new KeyboardEvent('keydown', { key, ...held }));

  it('is what the lists of keys show', () => {
    expect(press('p')).toBe('P');
    expect(press('Z', { ctrlKey: true, shiftKey: true })).toBe('Ctrl+Shift+Z');
    expect(press('z', { metaKey: true })).toBe('Ctrl+Z');
    expect(press('ArrowLeft', { altKey: true })).toBe('Alt+←');
    expect(press('?', { shiftKey: true })).toBe('?');
    expect(press(' ')).toBe('Space');
  });
});

describe('a choice kept in this window', () => {
  it('is the usual one until another is made, and after nonsense', () => {
    const choice = storedChoice('test.choice', ['a', 'b'], 'a');
    expect(choice.read()).toBe('a');
    choice.write('b');
    expect(choice.read()).toBe('b');
    localStorage.setItem('test.choice', 'nonsense');
    expect(choice.read()).toBe('a');
  });
});
