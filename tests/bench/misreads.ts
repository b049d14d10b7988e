import { emptyTally, tryFile } from '../support/foreign-files/trial.ts';

/**
 * Files of orders as others write them (tests/support/foreign-files), read for a small shop and compared with what their
 * writers meant. Prints one JSON line; what was misread goes to stderr with the file's number, and `--seed` that number with
 * `--files 1` tries it alone.
 */
export async function benchMisreads(files: number, seed: number): Promise<void> {
  const tally = emptyTally();
  for (let k = 0; k < files; k++) {
    const before = tally.misread.length;
    await tryFile(seed + k, tally);
    for (const words of tally.misread.slice(before)) process.stderr.write(`${words}\n`);
    if (k % 1000 === 999) process.stderr.write(`${k + 1} files\n`);
  }
  const { misread, ...counts } = tally;
  process.stdout.write(`${JSON.stringify({ files, ...counts, misread: misread.length })}\n`);
  if (misread.length > 0) process.exitCode = 1;
}
