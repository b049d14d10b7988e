import { describe, expect, it } from 'vitest';
import type { FormRow } from '../../../core/edit/command.ts';
import { applyCommand } from '../../../core/edit/apply.ts';
import { invert, withChanges } from '../../../core/shop/row-change.ts';
import { aColour, aMaterial, aSheet, aShop } from '../../support/builders.ts';
import { refusalOf } from '../../support/edits.ts';

const empty = aShop({
  material: [],
  colour: [],
  sheet: [],
  part: [],
  order: [],
  line: [],
  queue: [],
  pin: [],
});
const save = (rows: FormRow[]) => ({ do: 'rows.save', rows, label: 'Add the usual metal' }) as const;
const metal: FormRow = { kind: 'material', row: aMaterial() };
const moss: FormRow = { kind: 'colour', row: aColour() };
const size: FormRow = { kind: 'sheet', row: aSheet() };

describe('saving several rows in one step', () => {
  it('takes rows that name others before them, and undo takes them all back', () => {
    const edit = applyCommand(empty, save([metal, moss, size]));
    if (!edit.ok) throw new Error('refused');
    expect(edit.value.changes.map(({ kind, id }) => `${kind} ${id}`)).toEqual([
      'material galv',
      'colour moss',
      'sheet galv-24-moss',
    ]);
    const filled = withChanges(empty, edit.value.changes);
    expect(filled.sheet).toHaveLength(1);
    expect(withChanges(filled, invert(edit.value.changes))).toEqual(empty);
  });

  it('takes none when one cannot be saved, and names that one', () => {
    expect(refusalOf(empty, save([metal, size]))).toContain('There is no colour moss.');
  });

  it('sees a code that stands twice among them, also in other letters', () => {
    const twice = { ...size, row: aSheet({ id: 'GALV-24-moss' }) } as FormRow;
    expect(refusalOf(empty, save([metal, moss, size, twice]))).toContain('galv-24-moss');
  });

  it('saves thousands of sizes at once without a wait', () => {
    const sizes = Array.from({ length: 3000 }, (_, i): FormRow => ({
      kind: 'sheet',
      row: aSheet({ id: `s-${i}` }),
    }));
    const start = performance.now();
    expect(applyCommand(empty, save([metal, moss, ...sizes])).ok).toBe(true);
    expect(performance.now() - start).toBeLessThan(2000);
  });
});
