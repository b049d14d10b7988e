import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { secondsOf } from '../../../core/learn/counts.ts';
import { evidenceOf, lateChange } from '../../../core/learn/evidence.ts';
import { learnStandards, standardsWith } from '../../../core/learn/learn-standards.ts';
import { factor } from '../../../core/learn/linear.ts';
import type { Observation } from '../../../core/learn/observation.ts';
import { median } from '../../../core/learn/robust.ts';
import { Rng } from '../../../core/rng.ts';
import { sentence } from '../../../core/result.ts';
import { brake, finished, plainBrake, plainCounts, SCATTER, trueOf, type Learner } from './invented.ts';

const learn = (machine: Learner, observations: readonly Observation[]) => {
  const learned = learnStandards(machine, observations);
  if (!learned.ok) throw new Error(sentence(learned.issues));
  return learned.value;
};
const learnedFrom = (observations: readonly Observation[]): Learner => ({
  ...brake,
  standards: standardsWith(brake, learn(brake, observations)),
});
const refusal = (observations: readonly Observation[]): string => {
  const learned = learnStandards(brake, observations);
  return learned.ok ? 'learned' : sentence(learned.issues);
};
const errorOf = (machine: Learner, observations: readonly Observation[]): number =>
  median(observations.map((o) => Math.abs(secondsOf(machine, o.counts) - o.actualSeconds) / o.actualSeconds));
const seeds = (count: number): number[] => Array.from({ length: count }, (_, k) => k + 1);

/**
 * Least standard error, as a share, that any unbiased fit of these standards can have: the Cramér-Rao bound (C. R. Rao,
 * 1945; H. Cramér, 1946) for log-normal scatter. Grouped keys are met together and count as one.
 */
function leastErrors(truth: Learner, observations: readonly Observation[], groups: readonly string[][]) {
  const information = groups.map(() => groups.map(() => 0));
  for (const { counts } of observations) {
    const whole = secondsOf(truth, counts);
    const shares = groups.map(
      (keys) => secondsOf(truth, Object.fromEntries(keys.map((k) => [k, counts[k] ?? 0]))) / whole,
    );
    shares.forEach((a, i) => shares.forEach((b, j) => (information[i]![j]! += (a * b) / SCATTER ** 2)));
  }
  return factor(information).inverseDiagonal().map(Math.sqrt);
}

describe('after 200 finished operations, 5 % of them wild,', () => {
  const groups = [['firstPiece', 'bundle'], ['hitShort'], ['hitLong']];

  /** Each standard learned in a hundred shops: its error as a logarithm, and the least standard error it can have. */
  const learnedOnes = seeds(100).flatMap((seed) => {
    const rng = new Rng(seed);
    const truth = trueOf(plainBrake, rng);
    const observations = finished(truth, 200, rng, plainCounts);
    const least = leastErrors(truth, observations, groups);
    return learn(plainBrake, observations).map(({ key, proposed }) => ({
      shop: seed,
      key,
      error: Math.log(proposed / truth.standards[key]!),
      least: least[groups.findIndex((keys) => keys.includes(key))]!,
    }));
  });

  it('every standard that they can tell (Cramér-Rao bound up to 4 %) is within 10 % of the truth', () => {
    const told = learnedOnes.filter(({ least }) => least <= 0.04);
    expect(told.length).toBeGreaterThan(300);
    // Chance alone puts about one of 160 outside, two and a half of its standard errors off: 22 of 3,730 in 1,000 shops.
    expect(told.filter(({ error }) => Math.abs(Math.exp(error) - 1) > 0.1)).toEqual([]);
  });

  it('no fit could be much nearer: errors are at most a tenth above the least there can be', () => {
    const squares = learnedOnes.map(({ error, least }) => (error / least) ** 2);
    expect(Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / squares.length)).toBeLessThan(1.1);
  });

  it('the true standard lies in about nine of ten 90 % intervals', () => {
    let [inside, all] = [0, 0];
    for (const seed of seeds(100)) {
      const rng = new Rng(seed);
      const truth = trueOf(brake, rng);
      for (const { key, interval } of learn(brake, finished(truth, 200, rng))) {
        all += 1;
        if (interval[0] <= truth.standards[key]! && truth.standards[key]! <= interval[1]) inside += 1;
      }
    }
    expect(inside / all).toBeGreaterThan(0.85);
    expect(inside / all).toBeLessThan(0.95);
  });

  it('most of the wild ones are named as outliers, and hardly any of the rest', () => {
    const rng = new Rng(7);
    const truth = trueOf(brake, rng);
    const observations = finished(truth, 200, rng);
    const wild = new Set(
      observations.filter((o) => o.actualSeconds / secondsOf(truth, o.counts) > 2.5).map((o) => o.id),
    );
    const named = learn(brake, observations).find((p) => p.key === 'firstPiece')!.outliers;
    expect(wild.size).toBeGreaterThan(5);
    expect(named.filter((id) => wild.has(id)).length / wild.size).toBeGreaterThan(0.8);
    expect(named.filter((id) => !wild.has(id)).length).toBeLessThan(3);
  });
});

describe('after 30 finished operations', () => {
  const errors = (truthOf: (rng: Rng) => Learner) =>
    seeds(200).map((seed) => {
      const rng = new Rng(1000 + seed);
      const truth = truthOf(rng);
      const learned = learnedFrom(finished(truth, 30, rng));
      const later = finished(truth, 200, rng);
      return errorOf(learned, later) / errorOf(brake, later);
    });

  it('other work is foretold no worse than with the defaults in at least 85 % of shops', () => {
    const changes = errors((rng) => trueOf(brake, rng));
    expect(changes.filter((change) => change <= 1).length / changes.length).toBeGreaterThan(0.85);
    expect(median(changes)).toBeLessThan(0.9);
  });

  it('a shop where the defaults are right loses little by learning', () => {
    expect(median(errors(() => brake))).toBeLessThan(1.05);
  });
});

describe('standards that are always met together', () => {
  const rng = new Rng(3);
  const observations = finished(trueOf(brake, rng), 60, rng);

  it('move together, in proportion, and say so', () => {
    const of = (key: string) => learn(brake, observations).find((p) => p.key === key)!;
    expect(of('pickUp').together).toEqual(['putDown']);
    expect(of('firstPiece').together).toEqual(['bundle']);
    expect(of('putDown').proposed / of('pickUp').proposed).toBeCloseTo(2 / 3, 2);
    expect(of('hitShort').together).toEqual([]);
  });

  it('leave a standard that never occurs without a proposal, and one of zero too', () => {
    const short = observations.map((o) => ({ ...o, counts: { ...o.counts, hitLong: 0 } }));
    expect(learn(brake, short).some((p) => p.key === 'hitLong')).toBe(false);
    const noTurns = { ...brake, standards: { turn: 0 } };
    expect(learn(noTurns, observations).some((p) => p.key === 'turn')).toBe(false);
  });

  it('account for all of the fitted time between them', () => {
    const whole = learn(brake, observations).reduce((sum, p) => sum + p.explained, 0);
    expect(whole).toBeCloseTo(1, 9);
  });
});

describe('there is nothing to learn, and a sentence says why,', () => {
  const [one] = finished(brake, 1, new Rng(1)) as [Observation];

  it('when nothing is finished yet, on this machine', () => {
    expect(refusal([])).toContain('nothing to learn from');
    expect(refusal([{ ...one, machineId: 'B2' }])).toContain('nothing to learn from');
    expect(standardsWith(brake, [])).toEqual(brake.standards);
  });

  it('when every time is zero', () => {
    expect(refusal([{ ...one, actualSeconds: 0 }])).toContain('time or an estimate of zero');
  });

  it.each([-60, NaN, Infinity])('when a record took %s seconds', (actualSeconds) => {
    expect(refusal([one, { ...one, id: '77/1:brake', actualSeconds }])).toContain('Record 77/1:brake took');
  });

  it('when a record counts what the machine does not do, or less than nothing of it', () => {
    expect(refusal([{ ...one, counts: { sheetLoad: 3 } }])).toContain('"sheetLoad"');
    expect(refusal([{ ...one, counts: { flip: -3 } }])).toContain('"flip" -3 times');
  });

  it('when times are of another order than the estimates', () => {
    const inMinutes = { ...one, actualSeconds: one.actualSeconds / 60 };
    expect(refusal([inMinutes])).toContain('these times are of something else');
  });

  it('when present figures are to be held by nothing', () => {
    expect(learnStandards(brake, [one], { together: 0, apart: 0 }).ok).toBe(false);
  });
});

describe('learning', () => {
  const observation = fc.record({
    id: fc.uuid(),
    machineId: fc.constant('B1'),
    at: fc.integer({ min: 0, max: 1e9 }),
    counts: fc.record({
      firstPiece: fc.constant(1),
      pickUp: fc.integer({ min: 0, max: 1000 }),
      hitShort: fc.integer({ min: 0, max: 5000 }),
      flip: fc.integer({ min: 0, max: 2000 }),
    }),
    actualSeconds: fc.integer({ min: 0, max: 10_000_000 }),
  });

  it('never proposes a standard below zero or one that is no number', () => {
    fc.assert(
      fc.property(fc.array(observation, { maxLength: 40 }), (observations) => {
        const learned = learnStandards(brake, observations);
        for (const { proposed, interval } of learned.ok ? learned.value : [])
          for (const figure of [proposed, ...interval]) expect(figure).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it('comes to the same proposals whatever the order of the records, and however often it is asked', () => {
    const shuffled = fc.shuffledSubarray(finished(brake, 40, new Rng(2)), { minLength: 40 });
    const first = learn(brake, finished(brake, 40, new Rng(2)));
    fc.assert(
      fc.property(shuffled, (observations) => {
        expect(learn(brake, observations)).toEqual(first);
      }),
      { numRuns: 20 },
    );
  });

  it('names a record without a time as an outlier and learns from the rest', () => {
    const observations = finished(brake, 40, new Rng(2));
    const blank = { ...observations[0]!, id: '1/1:brake', actualSeconds: 0 };
    const [plain, with0] = [learn(brake, observations), learn(brake, [...observations, blank])];
    expect(with0.map((p) => p.proposed)).toEqual(plain.map((p) => p.proposed));
    expect(with0[0]!.outliers).toContain('1/1:brake');
  });
});

describe('the evidence', () => {
  const rng = new Rng(11);
  const truth = trueOf(brake, rng);
  const observations = finished(truth, 90, rng);

  it('sets actual times beside the present and the proposed estimate, by time', () => {
    const proposals = learn(brake, observations);
    const points = evidenceOf(brake, observations.toReversed(), proposals);
    if (!points.ok) throw new Error('evidence was refused');
    expect(points.value.map((p) => p.id)).toEqual(observations.map((o) => o.id));
    const [first] = points.value;
    expect(first!.present).toBe(secondsOf(brake, observations[0]!.counts));
    expect(first!.proposed).toBe(secondsOf(learnedFrom(observations), observations[0]!.counts));
    expect(evidenceOf(brake, [], proposals).ok).toBe(false);
  });

  it('foretells the last third from the first two thirds', () => {
    const change = lateChange(brake, observations);
    if (!change.ok) throw new Error('nine operations are enough');
    const late = observations.slice(60);
    expect(change.value).toMatchObject({ learnedFrom: 60, foretold: 30 });
    expect(change.value.before).toBe(errorOf(brake, late));
    expect(change.value.after).toBe(errorOf(learnedFrom(observations.slice(0, 60)), late));
    expect(change.value.after).toBeLessThan(change.value.before);
  });

  it('cannot foretell from a handful', () => {
    expect(lateChange(brake, observations.slice(0, 8))).toMatchObject({ ok: false });
  });
});
