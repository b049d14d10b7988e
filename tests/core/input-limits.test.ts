import { describe, expect, it } from 'vitest';
import { code } from '../../core/fields.ts';
import { faultOf, MOST } from '../../core/input-limits.ts';
import { readCutProblem } from '../../core/cutting/cut-problem.ts';
import { readShopProblem } from '../../core/schedule/shop-problem.ts';
import { attributes } from '../../core/shop/machine.ts';
import { operationId } from '../../core/shop/order.ts';
import { calendar } from '../../core/time/calendar.ts';
import { aCalendar } from '../support/builders.ts';
import { cutProblemFile, shopProblemFile } from '../support/doors/files.ts';
import { nested } from '../support/doors/wild.ts';

const circle: { self?: unknown } = {};
circle.self = circle;

describe('a value from outside', () => {
  it('that is plain and of a usual size is looked into', () => {
    expect(faultOf({ a: [1, 'x', null, true, { b: undefined }], 'name it': '😀 Ü' })).toBeNull();
    expect(faultOf('x'.repeat(MOST.textCharacters))).toBeNull();
    expect(faultOf(nested(MOST.nesting, true))).toBeNull();
  });

  it.each([
    ['a text too long', { a: 'x'.repeat(MOST.textCharacters + 1) }, /longer than 4000 characters/],
    ['lists too deep', nested(MOST.nesting + 1, false), /deeper than 24 levels/],
    ['no end', circle, /deeper than 24 levels/],
    ['more values than anyone sends', { a: new Array(4_000_000_000) }, /more than 600\u00a0000 values/],
    ['a NUL', ['a\0b'], /character that cannot be kept/],
    ['half of a pair', { a: { b: 'x\ud800' } }, /character that cannot be kept/],
    ['a way to the prototype', JSON.parse('{"a":{"__proto__":{"b":1}}}'), /name that cannot be one/],
    ['a word of the language', { constructor: 1 }, /name that cannot be one/],
    ['a map', { a: new Map() }, /neither a text, a number/],
    ['bytes', new Uint8Array(10), /neither a text, a number/],
    ['a number without end', 10n, /neither a text, a number/],
  ])('with %s is refused', (_what, value, fault) => {
    expect(faultOf(value)).toMatch(fault);
  });

  it('may bring a file in a field that is named for it', () => {
    const file = { base64: 'x'.repeat(MOST.textCharacters + 1) };
    expect(faultOf(file, { longTexts: ['base64'] })).toBeNull();
    expect(faultOf(file, { longTexts: ['other'] })).not.toBeNull();
  });
});

describe('a row from outside', () => {
  const [shift] = aCalendar().shifts;

  it.each([
    [
      'a calendar of more shifts than a week can have',
      () => calendar.safeParse(aCalendar({ shifts: Array(31).fill(shift) })),
    ],
    ['a line whose number is no number of one', () => operationId.safeParse(`${'1'.repeat(61)}:shear`)],
    ['a setup named by a whole page', () => attributes.safeParse({ gauge: 'x'.repeat(121) })],
  ])('(%s) is refused', (_what, parse) => {
    expect(parse().success).toBe(false);
  });
});

describe('a word that every object knows', () => {
  it.each(['constructor', 'toString', 'hasOwnProperty'])('is no code: %s', (word) => {
    expect(code.safeParse(word).success).toBe(false);
    expect(code.safeParse(`${word}1`).success).toBe(true);
  });

  it.each(['S1', 'J1', 'gauge', 'family'])('is refused in a problem file, in the place of %s', (name) => {
    for (const word of ['__proto__', 'constructor']) {
      const raw: unknown = JSON.parse(shopProblemFile.replaceAll(`"${name}"`, `"${word}"`));
      const read = readShopProblem(raw);
      expect(read.ok ? 'read' : read.issues[0]?.message).toMatch(/cannot be/);
    }
    const raw: unknown = JSON.parse(cutProblemFile.replaceAll('"a"', '"__proto__"'));
    expect(readCutProblem(raw).ok).toBe(false);
  });
});
