import { expect, it } from 'vitest';
import { QuestionWorker } from '../../electron/service/question-worker.ts';
import type { FromSolver } from '../../electron/solver/messages.ts';
import { aShop, NOW } from '../support/builders.ts';
import { fakeSolvers } from './fake-solver.ts';
import { laterRefusal, memoryLog } from './support.ts';

/** A worker whose processes answer only when the test says so. */
function start() {
  const { launch, processes } = fakeSolvers();
  const log = memoryLog();
  const worker = new QuestionWorker(launch, log);
  const shop = aShop();
  const ask = (jobId: string) =>
    worker.ask(jobId, { kind: 'protect', shop, now: NOW, confidence: 0.9, records: [] });
  const answer = (jobId: string, due: number): FromSolver => ({
    kind: 'done',
    jobId,
    best: { '1042/1': due },
    counts: null,
  });
  const asked = (at: number) => processes[at]!.heard.map(({ kind, jobId }) => `${kind} ${jobId}`);
  return { worker, ask, answer, asked, processes, log };
}

it('answers one question after the other, all by one process', async () => {
  const { ask, answer, asked, processes } = start();
  const answers = Promise.all([ask('a'), ask('b')]);
  expect(asked(0)).toEqual(['start a']);
  processes[0]!.send(answer('a', 1));
  expect(asked(0)).toEqual(['start a', 'start b']);
  processes[0]!.send(answer('b', 2));
  expect(await answers).toEqual([{ '1042/1': 1 }, { '1042/1': 2 }]);
  const later = ask('c');
  processes[0]!.send(answer('c', 3));
  expect(await later).toEqual({ '1042/1': 3 });
  expect(processes).toHaveLength(1);
});

it('withdraws one that waits at once, and waits for the process of the one at work', async () => {
  const { worker, ask, answer, asked, processes } = start();
  const [first, behind, next] = [ask('first'), ask('behind'), ask('next')];
  worker.stop('behind');
  expect((await laterRefusal(behind)).message).toMatch(/withdrawn/);
  worker.stop('first');
  expect(asked(0)).toEqual(['start first', 'stop first']);
  processes[0]!.send({ kind: 'done', jobId: 'first', best: null, counts: null });
  expect((await laterRefusal(first)).message).toMatch(/withdrawn/);
  processes[0]!.send(answer('next', 5));
  expect(await next).toEqual({ '1042/1': 5 });
  expect(processes).toHaveLength(1);
});

it('is asked once more of another process when the first dies, and told as a sentence when that dies too', async () => {
  const { ask, answer, processes, log } = start();
  const one = ask('one');
  processes[0]!.exit();
  processes[1]!.send(answer('one', 4));
  expect(await one).toEqual({ '1042/1': 4 });
  const two = ask('two');
  const three = ask('three');
  processes[1]!.exit();
  processes[2]!.exit();
  expect(await laterRefusal(two)).toMatchObject({
    code: 'internal',
    message: expect.stringMatching(/stopped\. Nothing was changed; ask again/),
  });
  processes[3]!.send(answer('three', 6));
  expect(await three).toEqual({ '1042/1': 6 });
  expect(log.lines).toHaveLength(3);
});

it('tells a refusal in its own words', async () => {
  const { ask, processes, log } = start();
  const asked = ask('a');
  processes[0]!.send({ kind: 'refused', jobId: 'a', message: 'Too little work is finished.' });
  expect(await laterRefusal(asked)).toMatchObject({
    code: 'refused',
    message: 'Too little work is finished.',
  });
  expect(log.lines).toEqual([]);
});
