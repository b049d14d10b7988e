import { describe, expect, it } from 'vitest';
import { blanksOf, extraOf } from '../../../core/planning/blanks.ts';
import { cutRuns } from '../../../core/planning/cut-run.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { viewPlan } from '../../../core/planning/plan-view.ts';
import { blanksWords } from '../../../core/report/blank-words.ts';
import type { Shop } from '../../../core/shop/state.ts';
import {
  aLine,
  anOrder,
  aPart,
  aQueue,
  aShop,
  NOW,
  someSettings,
  type With,
} from '../../support/builders.ts';
import { after, refusalOf } from '../../support/edits.ts';
import { finish, start } from '../../support/floor-commands.ts';

const usual = { setUp: 1, scrapShare: 0.05 };

/** One line of so many corners, in a shop that cuts one blank to set up with and 5 % spare ones. */
const shopWith = (quantity: number, part: With<'part'> = {}, extraBlanks = usual): Shop =>
  aShop({
    settings: someSettings({ extraBlanks }),
    part: [aPart(part)],
    order: [anOrder()],
    line: [aLine({ quantity })],
    queue: [
      aQueue({ id: 'B1', operations: ['1042/1:brake'] }),
      aQueue({ id: 'S1', operations: ['1042/1:shear'] }),
    ],
  });

const asked = (shop: Shop) =>
  Object.fromEntries(operationsOf(shop).operations.map(({ stage, quantity }) => [stage, quantity]));
const sheared = (shop: Shop, good: number, scrapped = 0): Shop =>
  after(shop, start('1042/1:shear', 'S1', '07:00'), finish('1042/1:shear', '08:00', good, scrapped));
const bent = (shop: Shop, good: number, scrapped = 0): Shop =>
  after(shop, start('1042/1:brake', 'B1', '08:10'), finish('1042/1:brake', '10:00', good, scrapped));

describe('blanks beyond the pieces', () => {
  it('are one to set up with and spare ones to the nearest whole blank', () => {
    const of = (pieces: number, part = aPart()) => {
      const { setUp, spare } = extraOf({ extraBlanks: usual }, part, pieces);
      return [setUp, spare];
    };
    expect([of(1), of(9), of(10), of(40)]).toEqual([
      [1, 0],
      [1, 0],
      [1, 1],
      [1, 2],
    ]);
    const flat = aPart({ profile: { ...aPart().profile, flangesMm: [150], bends: [] } });
    expect(of(40, flat)).toEqual([0, 2]);
    expect(of(40, aPart({ extraBlanks: { setUp: 3, scrapShare: 0 } }))).toEqual([3, 0]);
  });

  it('are cut at the shear and taken from the sheets; the brake makes the pieces', () => {
    const shop = shopWith(40);
    expect(asked(shop)).toEqual({ shear: 43, brake: 40 });
    const view = viewPlan(shop, NOW);
    if (!view.ok) throw new Error('no plan');
    const [run] = [...cutRuns(shop, view.value)];
    expect(run?.plan.ok && run.plan.value.lines.map(({ cut }) => cut)).toEqual([43]);
  });

  it('change nothing in a shop that says nothing of them', () => {
    const shop = shopWith(40, {}, { setUp: 0, scrapShare: 0 });
    expect(asked(shop)).toEqual({ shear: 40, brake: 40 });
  });

  it('are said where blanks are shown', () => {
    expect(blanksWords(43, { setUp: 1, spare: 2 })).toBe('40 + 1 to set up + 2 spare');
    expect(blanksWords(41, { setUp: 1, spare: 0 })).toBe('40 + 1 to set up');
    expect(blanksWords(40, { setUp: 0, spare: 0 })).toBe('40');
  });
});

describe('on the floor, of a line of 40 pieces with 43 blanks', () => {
  const shop = shopWith(40);
  const remakes = ({ line }: Shop): number[] => line.filter((l) => l.makeUpFor).map((l) => l.quantity);

  it('43 are counted at the shear; spoiled ones are made again only where pieces would be missing', () => {
    expect(
      refusalOf(after(shop, start('1042/1:shear', 'S1', '07:00')), finish('1042/1:shear', '08:00', 44)),
    ).toContain('makes 43 pieces');
    expect(remakes(sheared(shop, 41, 2))).toEqual([]);
    expect(remakes(sheared(shop, 40))).toEqual([]);
    expect(remakes(sheared(shop, 38, 5))).toEqual([2]);
  });

  it('the piece that was set up with is scrapped, and 40 good ones finish the line', () => {
    const done = bent(sheared(shop, 43), 40, 3);
    expect(remakes(done)).toEqual([]);
    expect(done.line.map(({ status }) => status)).toEqual(['done']);
    expect(remakes(bent(sheared(shop, 43), 39, 4))).toEqual([1]);
  });

  it('a correction asks for remakes by what is then missing, not by what is spare', () => {
    const correct = (before: Shop, good: number) =>
      after(before, {
        do: 'floor.correct',
        operation: '1042/1:shear',
        at: NOW + 5 * 3600,
        patch: { good, scrapped: 43 - good },
        reason: 'Counted again',
      });
    const before = sheared(shop, 43);
    expect(remakes(correct(before, 41))).toEqual([]);
    expect(remakes(correct(before, 39))).toEqual([1]);
    expect(remakes(correct(correct(before, 39), 43))).toEqual([]);
  });

  it('the blanks of a line are as many as its part asks for, which is none beyond where that is gone', () => {
    expect(blanksOf(shop, shop.line[0]!)).toBe(43);
    expect(blanksOf({ ...shop, part: [] }, shop.line[0]!)).toBe(40);
  });
});
