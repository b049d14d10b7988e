import { describe, expect, it } from 'vitest';
import { asHappened, drawnAgain, left, percent, rollingOrigin, together } from './past-plans.ts';

/**
 * Lines promised at 80 %, over half a year of the demo's finished operations. The spread is learned from the work before
 * a day; the truth is the work after it. Lines of one plan are early or late together (one stuck press brake makes all
 * behind it late), so four weeks alone lie anywhere from 70 to 92 % even when the chances are right: histories drawn
 * again show a standard deviation of 6 % for plans of a day and of 11 % for plans of a week. All cuts together tell more,
 * and many histories tell whether the chances lean: over forty of them 79 % are kept in plans of a week and where days
 * are alike, 77.5 % in plans of a day where days differ. Of that, 0.8 % is the hundred runs: the 80th of a hundred is
 * kept 80 in 101 times.
 * `npm run bench` prints every cut.
 */
const HISTORIES = 12;

/** Share kept over many histories, all cuts together. */
const overHistories = (horizon: 'day' | 'week', daySpread: number): number =>
  percent(
    together(
      Array.from({ length: HISTORIES }, (_, k) =>
        together(rollingOrigin(horizon, drawnAgain(k + 1, daySpread), 100)),
      ),
    ),
  );

describe('of lines promised at 80 % in the demo shop, about eight in ten are on time', () => {
  it('with every finished operation known to the shop', () => expect(left).toEqual([]));

  it.each(['day', 'week'] as const)(
    'in plans of a %s over the months held out, all cuts together',
    (horizon) => {
      const cuts = rollingOrigin(horizon, asHappened, 500);
      expect(cuts.every(({ lines }) => lines > 100)).toBe(true);
      expect(percent(together(cuts))).toBeGreaterThan(74);
      expect(percent(together(cuts))).toBeLessThan(86);
    },
  );

  it.each([
    ['day', 'are alike', 0],
    ['day', 'differ by 15 %', 0.15],
    ['week', 'differ by 15 %', 0.15],
  ] as const)('in plans of a %s over many histories whose days %s', (horizon, _, daySpread) => {
    const kept = overHistories(horizon, daySpread);
    expect(kept).toBeGreaterThan(74);
    expect(kept).toBeLessThan(86);
  });
});
