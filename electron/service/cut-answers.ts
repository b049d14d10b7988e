import type { CutAnswers } from '../../core/contract/cuts.ts';
import type { CutAnswer } from '../../core/cutting/answer.ts';
import { betterOf } from '../../core/cutting/compare.ts';
import type { CutPlan } from '../../core/cutting/plan.ts';
import { Remembered } from '../../core/cutting/remember.ts';
import type { Store } from '../db/open.ts';
import type { Log } from '../log.ts';
import type { Clock } from './clock.ts';

/** At hand for the screens; the file keeps more. */
const AT_HAND = 300;

export type StoredAnswers = ReturnType<typeof storedAnswers>;

/** What was found for each run: at hand while it is worked on, kept in the data file when that is over. */
export function storedAnswers(store: Store, clock: Clock, log: Pick<Log, 'error'>) {
  let atHand: Remembered<CutAnswer> | null = null;
  store.onReplaced(() => (atHand = null));
  const all = (): Remembered<CutAnswer> => {
    if (atHand) return atHand;
    atHand = new Remembered(AT_HAND);
    for (const answer of stored().toReversed()) atHand.put(answer.key, answer);
    return atHand;
  };
  const stored = () => store.run('read the sheets found', ({ cutAnswers }) => cutAnswers.newest(AT_HAND));
  const get = (key: string): CutAnswer | null => {
    const known = all().get(key);
    if (known) return known;
    const older = store.run('read the sheets found', ({ cutAnswers }) => cutAnswers.get(key));
    if (older) all().put(key, older);
    return older;
  };
  /** They can be found again: what cannot be kept now is only said in the log. */
  const inFile = (keep: () => void): void => {
    try {
      keep();
    } catch (error) {
      log.error('the sheets found could not be kept', error);
    }
  };
  return {
    get,
    /** The better of it and what was known. */
    better(key: string, plan: CutPlan, settled = false): void {
      const known = get(key);
      all().put(key, {
        key,
        plan: known ? betterOf(known.plan, plan) : plan,
        settled: settled || (known?.settled ?? false),
      });
    },
    keep: (keys: readonly string[]): void =>
      inFile(() =>
        store.run('keep the sheets found', ({ cutAnswers }) => {
          for (const key of keys) {
            const answer = all().get(key);
            if (answer) cutAnswers.put(answer, clock.now());
          }
        }),
      ),
    /** These are still asked for; others are forgotten first. */
    inUse: (keys: readonly string[]): void =>
      inFile(() => store.run('use the sheets found', ({ cutAnswers }) => cutAnswers.use(keys, clock.now()))),
    all: (): CutAnswer[] =>
      all()
        .entries()
        .map(([, answer]) => answer),
    told: (): CutAnswers['answers'] =>
      all()
        .entries()
        .map(([key, { plan }]) => ({ key, plan })),
  };
}
