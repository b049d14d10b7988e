import { Rng } from '../../../core/rng.ts';

/** Draws for the cases that try the doors; one seed a case, so that a case can be told by its number. */
export class Draw {
  readonly #rng: Rng;

  constructor(seed: number) {
    this.#rng = new Rng(seed);
  }

  below(count: number): number {
    return this.#rng.below(count);
  }

  /** True in so many of a hundred. */
  chance(percent: number): boolean {
    return this.#rng.below(100) < percent;
  }

  of<T>(list: readonly T[]): T {
    return list[this.#rng.below(list.length)]!;
  }
}

/** Names that every object has, or that lead to its prototype. */
export const objectNames = ['__proto__', 'constructor', 'prototype', 'toString', 'hasOwnProperty'];

/** Texts that have broken readers of texts before. */
const texts = [
  '',
  ' ',
  '\0',
  'a\0b',
  '\ud800',
  'x\udfffy',
  '\ufeff',
  '\u202eback',
  'e\u0301'.repeat(50),
  '"',
  "'; drop table line; --",
  '=1+1',
  '../../x',
  '%00',
  'NaN',
  'Infinity',
  '-0',
  '1e999',
  '0x10',
  '١٢٣',
  '9'.repeat(400),
  '1/0',
  '99999999-99-99',
  '2026-02-31 24:61',
  'null',
  '\r\n',
  '1 1 1 1 1 1 1/1/1',
  ...objectNames,
];
/** Long enough to show a step that takes its square. */
const longTexts = [
  (n: number) => 'x'.repeat(n),
  (n: number) => '1'.repeat(n),
  (n: number) => '1 '.repeat(n / 2),
  (n: number) => '1,111'.repeat(n / 5),
  (n: number) => ' '.repeat(n) + 'x',
  (n: number) => '-'.repeat(n),
  (n: number) => '\u{1f600}'.repeat(n / 2),
];
const lengths = [130, 2001, 5000, 100_000, 1_000_000];

export const wildText = (draw: Draw): string =>
  draw.chance(80) ? draw.of(texts) : draw.of(longTexts)(draw.of(lengths));

export const wildNumber = (draw: Draw): number =>
  draw.of([
    ...[0, -0, -1, 1, 0.5, -0.1, 1e-320, 2 ** 31, 2 ** 32, 2 ** 53, -(2 ** 53), 1e15, 1e21],
    ...[1e308, -1e308, 946_684_800, 4_102_444_800, 100_001, 9999, 10_000],
  ]);

/** Lists in lists, or objects in objects. */
export function nested(depth: number, object: boolean): unknown {
  let inner: unknown = 1;
  for (let k = 0; k < depth; k++) inner = object ? { a: inner } : [inner];
  return inner;
}

const scalars = (draw: Draw): unknown[] => [null, true, false, wildNumber(draw), wildText(draw)];

/** Any value that JSON can say. */
export function wildJson(draw: Draw): unknown {
  const kind = draw.below(10);
  if (kind < 6) return draw.of(scalars(draw));
  if (kind === 6) return [draw.of(scalars(draw))];
  if (kind === 7) return { [draw.of(objectNames.slice(1))]: draw.of(scalars(draw)) };
  if (kind === 8) return nested(draw.of([30, 200]), draw.chance(50));
  return draw.chance(50) ? [] : {};
}

/** What a window can send besides: it copies more than JSON knows. */
export function wildCopied(draw: Draw): unknown {
  const circle: { self?: unknown } = {};
  circle.self = circle;
  return draw.of<unknown>([
    ...[undefined, NaN, Infinity, -Infinity, 10n, new Date(NaN), new Map([['a', 1]]), new Set([1])],
    ...[
      new Uint8Array(3_000_000),
      /x/,
      new Error('x'),
      circle,
      new Array(1_000_000),
      new Array(4_000_000_000),
    ],
    ...[nested(100_000, true), Object.assign([], { surplus: 1 })],
  ]);
}
