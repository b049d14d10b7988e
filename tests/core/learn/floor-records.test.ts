import { expect, it } from 'vitest';
import { changeoversOf, observationsOf } from '../../../core/learn/happened.ts';
import { aRecord, aShop, at } from '../../support/builders.ts';

const monday = (clock: string) => at('2026-11-30', clock);

it('pauses do not count as time taken, nor does the lunch break that one spans', () => {
  const pauses = [
    { from: monday('10:00'), to: monday('10:30'), reason: 'No sheets' },
    { from: monday('11:20'), to: monday('12:10'), reason: 'Rush job' },
  ];
  const record = aRecord({ start: monday('09:00'), end: monday('13:00'), pauses });
  const [seen] = observationsOf(aShop(), [record]).observations;
  // Four hours less half an hour of lunch, half an hour, and ten minutes either side of lunch.
  expect(seen?.actualSeconds).toBe((240 - 30 - 30 - 20) * 60);
});

it('a changeover timed on the floor is taken as timed, whatever the gap shows', () => {
  const first = aRecord({ start: monday('07:00'), end: monday('08:00') });
  const next = (own: object) =>
    aRecord({ id: '1042/2:shear', gauge: '26', start: monday('12:30'), end: monday('13:00'), ...own });
  expect(changeoversOf(aShop(), [first, next({})])).toEqual([]);
  expect(changeoversOf(aShop(), [first, next({ changeoverSeconds: 540 })])).toMatchObject([
    { id: '1042/2:shear', kinds: ['gauge'], seconds: 540 },
  ]);
});
