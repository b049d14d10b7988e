import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { learnChangeover, type ChangeoverObservation } from '../../../core/learn/learn-changeover.ts';
import { defaultChangeover } from '../../../core/estimate/changeover.ts';
import { Rng } from '../../../core/rng.ts';
import type { Attribute, ChangeoverRules } from '../../../core/shop/machine.ts';
import { sentence } from '../../../core/result.ts';
import { normal, SCATTER } from './invented.ts';

type Learner = Parameters<typeof learnChangeover>[0];
const old = { standards: {}, timesEdition: 1 } as const;
const brake: Learner = { id: 'B1', stage: 'brake', changeover: defaultChangeover('brake'), ...old };
const shear: Learner = { id: 'S1', stage: 'shear', changeover: defaultChangeover('shear'), ...old };

const learn = (machine: Learner, observations: readonly ChangeoverObservation[]) => {
  const learned = learnChangeover(machine, observations);
  if (!learned.ok) throw new Error(sentence(learned.issues));
  return learned.value;
};

/** Timed changeovers of an invented machine: each attribute changes half the time; some changeovers go wrong. */
function timed(machine: Learner, truth: ChangeoverRules, count: number, rng: Rng): ChangeoverObservation[] {
  const keys = Object.keys(truth.attributes) as Attribute[];
  return Array.from({ length: count }, (_, k) => {
    const kinds = keys.filter(() => rng.next() < 0.5);
    const each = kinds.map((kind) => truth.attributes[kind]!);
    const usual = truth.combine === 'sum' ? each.reduce((sum, s) => sum + s, 0) : Math.max(0, ...each);
    const wild = rng.next() < 0.05 ? 3 + 7 * rng.next() : 1;
    const seconds = Math.round(usual * Math.exp(SCATTER * normal(rng)) * wild);
    return { id: `${k}/1:brake`, machineId: machine.id, at: k, kinds, seconds };
  });
}

describe('changeover seconds by kind of change', () => {
  it.each([
    ['one after the other', brake, { profile: 420, gauge: 450, material: 260 }],
    ['side by side', shear, { material: 840, gauge: 420, colour: 560 }],
  ])(
    'done %s are within 10 % of the truth after 600 changeovers, 5 %% of them wild',
    (_, machine, attributes) => {
      const truth = { ...machine.changeover, attributes };
      for (let seed = 1; seed <= 10; seed++) {
        const proposals = learn(machine, timed(machine, truth, 600, new Rng(seed)));
        expect(proposals.map((p) => p.key).sort()).toEqual(Object.keys(attributes).sort());
        for (const { key, proposed } of proposals) {
          const ratio = proposed / attributes[key as keyof typeof attributes]!;
          expect(Math.abs(ratio - 1), `${key}, seed ${seed}`).toBeLessThan(0.1);
        }
      }
    },
  );

  it('are whole, never negative, and the same whatever the order', () => {
    const observations = timed(brake, brake.changeover, 50, new Rng(4));
    const first = learn(brake, observations);
    for (const { proposed, interval } of first)
      for (const figure of [proposed, ...interval]) {
        expect(Number.isInteger(figure)).toBe(true);
        expect(figure).toBeGreaterThan(0);
      }
    fc.assert(
      fc.property(fc.shuffledSubarray(observations, { minLength: 50 }), (shuffled) => {
        expect(learn(brake, shuffled)).toEqual(first);
      }),
      { numRuns: 20 },
    );
  });

  it('stay as they are for a kind that never changed, and for one that costs nothing', () => {
    const onlyGauge = Array.from({ length: 30 }, (_, k): ChangeoverObservation => ({
      id: `${k}/1:brake`,
      machineId: 'B1',
      at: k,
      kinds: ['gauge', 'colour'],
      seconds: 500,
    }));
    expect(learn(brake, onlyGauge).map((p) => p.key)).toEqual(['gauge']);
  });

  it('are not learned from nothing, from other machines, or from times that cannot be', () => {
    const one: ChangeoverObservation = {
      id: '7/1:brake',
      machineId: 'B1',
      at: 0,
      kinds: ['gauge'],
      seconds: 60,
    };
    const refusal = (o: ChangeoverObservation[]) => {
      const learned = learnChangeover(brake, o);
      return learned.ok ? 'learned' : sentence(learned.issues);
    };
    expect(refusal([])).toContain('nothing to learn from');
    expect(refusal([{ ...one, machineId: 'B2' }])).toContain('nothing to learn from');
    expect(refusal([{ ...one, kinds: [] }])).toContain('nothing to learn from');
    expect(refusal([{ ...one, seconds: 0 }])).toContain('nothing to learn from');
    for (const seconds of [-1, NaN]) expect(refusal([{ ...one, seconds }])).toContain('7/1:brake');
  });

  it('of a brake whose first piece belongs to it are told apart from that piece', () => {
    const truth = { profile: 420, gauge: 450, material: 260, firstPiece: 500 };
    const machine: Learner = { ...brake, timesEdition: 2 };
    const alone = (kinds: Attribute[], k: number): ChangeoverObservation => ({
      id: `a${k}/1:brake`,
      machineId: 'B1',
      at: 1000 + k,
      kinds,
      seconds: kinds.reduce((sum, kind) => sum + truth[kind as 'profile'], truth.firstPiece),
    });
    const kinds = ['profile', 'gauge', 'material'] as const;
    const clean = Array.from({ length: 300 }, (_, k) =>
      alone(
        kinds.filter((__, n) => (k >> n) & 1),
        k,
      ),
    ).filter((one) => one.kinds.length > 0);
    const learned = learn(machine, clean);
    expect(learned.map(({ key }) => key)).toEqual(['material', 'gauge', 'profile', 'firstPiece']);
    for (const { key, proposed } of learned)
      expect(Math.abs(proposed / truth[key as keyof typeof truth] - 1), key).toBeLessThan(0.1);
  });
});
