import { describe, expect, it } from 'vitest';
import { operationsOf } from '../../../core/planning/operations.ts';
import { whyPeople } from '../../../core/report/people-words.ts';
import { timesOffer } from '../../../core/report/times-offer.ts';
import { wouldDo, wouldDoWords } from '../../../core/report/would-do.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBrake, aLine, anOrder, aShear, aShop, at, NOW, someSettings } from '../../support/builders.ts';
import { after } from '../../support/edits.ts';

const INCHES = { units: 'in', decimals: 'point' } as const;

/** Twelve lines that are bent one after the other through the first morning. */
const shopOf = (own: Partial<Shop> = {}): Shop =>
  aShop({
    order: [anOrder({ due: at('2026-11-30', '10:30') })],
    line: Array.from({ length: 12 }, (_, n) => aLine({ id: `1042/${n + 1}`, number: n + 1, quantity: 20 })),
    ...own,
  });

describe('usual times that have changed', () => {
  it('are not spoken of where every machine follows the newest', () => {
    const machine = [aShear({ timesEdition: 2 }), aBrake({ timesEdition: 2 })];
    expect(timesOffer(shopOf({ machine }))).toBeNull();
  });

  it('are named with what they are now and would become; figures of the shop’s own stay', () => {
    const brake = aBrake({ standards: { bundle: 240, turn: 9 } });
    const offer = timesOffer(shopOf({ machine: [brake, aShear()], settings: someSettings({ units: 'in' }) }));
    const of = (figure: RegExp) => offer?.changes.filter((one) => figure.test(one.figure));
    expect(of(/^Bundle/)).toMatchObject([{ machines: ['S1'], is: '300 s', becomes: '90 s' }]);
    expect(of(/^First piece/)).toMatchObject([
      { machines: ['B1'], is: 'with every line', becomes: 'once with the changeover that needs it' },
    ]);
    expect(of(/over 6 ft end for end/)).toMatchObject([{ is: '9 s', becomes: '12 s' }]);
    expect(of(/^Area/)).toMatchObject([{ machines: ['B1', 'S1'], is: 'never', becomes: '20 ft²' }]);
    expect(of(/^Feed and cut/)).toEqual([]);
    expect(offer?.changes.every(({ basis }) => basis !== '')).toBe(true);
  });

  it('are taken for all machines in one step, after which nothing is offered', () => {
    const shop = shopOf();
    const taken = after(shop, timesOffer(shop)!.command);
    expect(taken.machine.map(({ timesEdition }) => timesEdition)).toEqual([2, 2]);
    expect(timesOffer(taken)).toBeNull();
  });

  it('say before that what they would do to the plan as it stands, and do just that', () => {
    const shop = shopOf();
    const { command } = timesOffer(shop)!;
    const would = wouldDo(shop, command, NOW);
    if (!would.ok) throw new Error('not told');
    const { before, after: then } = would.value;
    expect(then).toBeLessThan(before);
    expect(wouldDo(after(shop, command), { do: 'rows.save', rows: [], label: 'x' }, NOW)).toMatchObject({
      ok: true,
      value: { before: then, after: then },
    });
    expect(wouldDoWords({ before: 21, after: 54 })).toContain('Late lines: 21 → 54');
  });
});

describe('two people', () => {
  it('are asked for with the figure that asks', () => {
    const machine = [aBrake({ timesEdition: 2 }), aShear({ timesEdition: 2, crew: 2, name: 'Old shear' })];
    const shop = shopOf({ machine, line: [aLine({ lengthMm: 2540, gauge: '26' })] });
    const why = operationsOf(shop).operations.map((operation) =>
      whyPeople(
        machine.find(({ stage }) => stage === operation.stage)!,
        operation,
        INCHES,
      ),
    );
    expect(why).toEqual([
      'Old shear has a crew of 2; the sheet is flimsy (up to 0.024 in) and 96 in long or longer; the sheet measures 20 ft² or more',
      'the piece is flimsy (up to 0.024 in) and 96 in long or longer',
    ]);
  });

  it('of one person nothing is said', () => {
    const [operation] = operationsOf(shopOf()).operations;
    expect(whyPeople(aBrake(), { ...operation!, people: 1 }, INCHES)).toBe('');
  });
});
