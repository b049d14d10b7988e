import { expect, it } from 'vitest';
import { entriesOf } from '../../../renderer/screens/orders/order-entries.ts';
import { tooLongLines } from '../../../renderer/screens/orders/too-long-lines.ts';
import { aShop } from '../../support/builders.ts';

const shop = aShop();
const current = entriesOf(shop, '1042')!;
const long = (lengthMm: number) => ({
  ...current,
  lines: current.lines.map((line, i) => (i === 0 ? { ...line, lengthMm } : line)),
});

it('a piece too long for every machine is refused on the form as in a file', () => {
  expect(tooLongLines(shop, current, long(9000))['lines.0.lengthMm']).toMatch(
    /^354\.331 in is longer than the .* that the longest shear, .*, takes\. Make it of shorter pieces\.$/,
  );
});

it('nothing is said of a length that fits, is still to be typed, or stood there before', () => {
  expect(tooLongLines(shop, current, current)).toEqual({});
  expect(tooLongLines(shop, current, long(NaN))).toEqual({});
  expect(tooLongLines(shop, long(9000), long(9000))).toEqual({});
});

it('a shop without machines is still set up: its orders can be typed', () => {
  expect(tooLongLines(aShop({ machine: [] }), current, long(9000))).toEqual({});
});
