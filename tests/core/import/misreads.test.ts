import { describe, expect, it } from 'vitest';
import { emptyTally, tryFile } from '../../support/foreign-files/trial.ts';

/** `npm run --silent bench -- misreads` tries thousands. */
const FILES = 100;

describe('files of orders as others write them', () => {
  it(`of ${FILES}, nothing is taken as something else than was meant`, { timeout: 300_000 }, async () => {
    const tally = emptyTally();
    for (let seed = 1; seed <= FILES; seed++) await tryFile(seed, tally);
    expect(tally.misread).toEqual([]);
    // Else all could be refused, and nothing would ever be misread.
    expect(tally.taken / tally.cells).toBeGreaterThan(0.7);
    expect(tally.lost / tally.cells).toBeLessThan(0.03);
  });
});
