import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Why } from '../../core/planning/answers.ts';
import type { AskState } from '../../core/contract/ask.ts';
import { changeWords } from '../../core/report/change-words.ts';
import { decode } from '../../core/schedule/decode.ts';
import { advisedWay, byAdvice } from '../../core/schedule/rush/advise.ts';
import { dispatch } from '../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../core/schedule/rules/edd.ts';
import type { Shop } from '../../core/shop/state.ts';
import { toProblem } from '../../core/planning/to-problem.ts';
import { loadDemo } from '../../demo-data/load.ts';
import { valueOf } from '../../electron/refused.ts';
import { askService } from '../../electron/service/ask.ts';
import { editService } from '../../electron/service/edit.ts';
import { nodeSolver, type LaunchSolver } from '../../electron/solver/launch.ts';
import type { ToSolver } from '../../electron/solver/messages.ts';
import { NOW } from '../support/builders.ts';
import {
  appFolder,
  fixedClock,
  keptPushes,
  laterRefusal,
  memoryLog,
  refusalOf,
  storeWith,
  tempFolder,
  testQuestions,
  shopIn,
  livingIn,
} from './support.ts';
import { madeFrom } from '../support/edits.ts';

const realSolver = nodeSolver(join(appFolder, 'electron/solver/solver.ts'));

/** The demo shop with a plan: every machine by due date. */
function demo(): Shop {
  const shop = loadDemo(join(appFolder, 'demo-data/shop'), NOW);
  const made = toProblem(shop, NOW);
  if (!made.ok) throw new Error('the demo shop cannot be planned');
  const queues = dispatch(made.value.problem, dueDateRule(made.value.problem));
  return {
    ...shop,
    queue: shop.queue.map((queue) => ({ ...queue, operations: [...(queues[queue.id] ?? [])] })),
  };
}

function open(shop = demo(), launch: LaunchSolver = realSolver) {
  const store = storeWith(shop);
  const pushes = keptPushes();
  const log = memoryLog();
  const clock = fixedClock();
  const living = livingIn(store, pushes, clock);
  const edit = editService(living, clock);
  const ask = askService({ living, clock, pushes, launch, questions: testQuestions(realSolver, log), log });
  const told = (wanted: (state: AskState) => boolean): Promise<AskState> =>
    new Promise((resolve) => {
      const stop = pushes.listen((push) => {
        if (push.kind !== 'ask' || !wanted(push.state)) return;
        stop();
        resolve(push.state);
      });
    });
  const ended = () => told(({ phase }) => phase !== 'running');
  return { ask, edit, told, ended, log, shop: () => shopIn(store) };
}

const search = { seconds: 0.6, seed: 1 };
const someLine = '4110/1';

describe('asking why a line ends when it does', () => {
  it('accounts for every second from now to its end', async () => {
    const why = await open().ask.why(someLine);
    expect(why.causes[0]!.from).toBe(NOW);
    expect(why.causes.at(-1)!.to).toBe(why.end);
    expect(why.causes.reduce((sum, { seconds }) => sum + seconds, 0)).toBe(why.end - NOW);
  });

  it('offers changes that can be taken as one step: the line then ends when it was said', async () => {
    const { ask, edit, shop } = open();
    const made = toProblem(shop(), NOW);
    if (!made.ok) throw new Error('the demo shop cannot be planned');
    const { jobAt } = made.value.problem;
    let asked: Why | null = null;
    for (const { id } of shop().line.filter(({ id }) => jobAt.has(id))) {
      asked = await ask.why(id);
      if (asked.changes.some((c) => !c.overtime)) break;
    }
    const { job: late, changes } = asked!;
    const change = changes.find((c) => !c.overtime)!;
    edit.apply(madeFrom(shop(), { do: 'plan.replace', queues: change.queues, label: `Help ${late}` }));
    expect((await ask.why(late)).end).toBe(change.end);
    edit.undo();
    expect((await ask.why(late)).end).toBeGreaterThan(change.end);
  });

  it('offers overtime with what the calendar makes of it: taken, the line ends when it was said; undone, as before', async () => {
    const { ask, edit, shop } = open();
    const lines = shop().line.filter(({ id, status }) => status === 'open' && /^41[1-4]\d\/1$/.test(id));
    const asked = (await Promise.all(lines.map(({ id }) => ask.why(id)))).filter((why) =>
      why.changes.some((c) => c.overtime),
    );
    expect(asked.length).toBeGreaterThan(3);
    for (const why of asked) {
      const change = why.changes.find((c) => c.overtime)!;
      edit.apply(changeWords(shop(), why.job, change).command!);
      expect(await ask.why(why.job)).toMatchObject({ end: change.end, late: change.late });
      edit.undo();
      expect((await ask.why(why.job)).end).toBe(why.end);
    }
  });

  it('is refused with a sentence for a line that is not in the plan', async () => {
    expect((await laterRefusal(open().ask.why('9999/1'))).message).toMatch(/^Line 9999\/1 is not among/);
  });

  it('is told when the process dies, and answered by another the next time', async () => {
    let crashing = true;
    const folder = tempFolder();
    const crash = join(folder, 'crash.mjs');
    writeFileSync(crash, 'process.exit(3);');
    const questions = testQuestions(() => (crashing ? nodeSolver(crash) : realSolver)());
    const ask = (jobId: string) =>
      questions.ask(jobId, { kind: 'why', shop: demo(), now: NOW, lineId: someLine });
    expect((await laterRefusal(ask('one'))).message).toMatch(/stopped\. Nothing was changed; ask again/);
    crashing = false;
    expect((await ask('two')).job).toBe(someLine);
  });
});

describe('asking how to take a rush in', () => {
  it('gives two ways at once, and the third no worse than the one of them that is advised', async () => {
    const { ask, ended } = open();
    const end = ended();
    const { jobId, ways } = ask.rush([someLine], false, search);
    expect(ways.map(({ way }) => way)).toEqual(['front', 'run']);
    const state = await end;
    expect(state).toMatchObject({ jobId, phase: 'finished', message: null });
    expect(byAdvice(state.way!, advisedWay(ways))).toBeLessThanOrEqual(0);
    expect(ask.read(jobId)).toEqual(state);
  });

  it('can be stopped: the best so far stays', async () => {
    const { ask, told, ended } = open();
    const found = told(({ way }) => way !== null);
    const end = ended();
    const { jobId } = ask.rush([someLine], false, { seconds: 60, seed: 1 });
    await found;
    ask.stop(jobId);
    const state = await end;
    expect(state.phase).toBe('stopped');
    expect(state.way).not.toBeNull();
  });

  it('says so when the solver dies, and the plan stays as it is', async () => {
    const dying: LaunchSolver = () => {
      const solver = realSolver();
      return { ...solver, send: () => solver.kill() };
    };
    const { ask, ended, log, shop } = open(demo(), dying);
    const before = shop().queue;
    const end = ended();
    ask.rush([someLine], false, search);
    expect(await end).toMatchObject({ phase: 'failed', message: expect.stringMatching(/stays as it is/) });
    expect(log.lines.join()).toMatch(/its process ended/);
    expect(shop().queue).toEqual(before);
  });
});

describe('asking for a repair after a breakdown', () => {
  it('starts from the order as it was; few moves are no more than asked for, the best plan is no dearer', async () => {
    const { ask, edit, ended, shop } = open();
    const row = {
      id: 'B1-x',
      machineId: 'B1',
      from: NOW,
      to: NOW + 12 * 3600,
      reason: 'ram',
      revision: 0,
    };
    edit.apply({ do: 'row.save', kind: 'downtime', row: row as never });
    const end = ended();
    const { jobId, lateBefore } = ask.repair({ kind: 'downtime', id: 'B1-x' }, 25, search);
    const { repair, phase } = await end;
    expect(phase).toBe('finished');
    expect(ask.read(jobId)?.repair).toEqual(repair);
    const { few, best } = repair!;
    expect(lateBefore.length).toBeLessThanOrEqual(few.late.length + few.saved.length);
    expect(few.movedOperations).toBeGreaterThan(0);
    expect(few.movedOperations).toBeLessThanOrEqual(25);
    expect(best.objective).toBeLessThanOrEqual(few.objective);
    edit.apply(madeFrom(shop(), { do: 'plan.replace', queues: few.queues, label: 'Repair the plan' }));
  });

  it('measures what is disturbed from the ends before the machine went down', () => {
    const asked: ToSolver[] = [];
    const watching: LaunchSolver = () => {
      const solver = realSolver();
      return { ...solver, send: (message) => void (asked.push(message), solver.send(message)) };
    };
    const { ask, edit, shop } = open(demo(), watching);
    const endsOf = () => {
      const { problem, queues } = valueOf(toProblem(shop(), NOW));
      return valueOf(decode(problem, queues)).ends;
    };
    const before = endsOf();
    const row = { id: 'B1-x', machineId: 'B1', from: NOW, to: NOW + 12 * 3600, reason: 'ram', revision: 0 };
    edit.apply({ do: 'row.save', kind: 'downtime', row: row as never });
    expect(endsOf()).not.toEqual(before);
    ask.stop(ask.repair({ kind: 'downtime', id: 'B1-x' }, 25, search).jobId);
    const [question] = asked;
    if (question?.kind !== 'start' || question.task.kind !== 'repair')
      throw new Error('the solver was asked nothing');
    expect(question.task.problem.reference).toEqual(before);
  });

  it('is refused when the stretch out of service is gone', () => {
    expect(refusalOf(() => open().ask.repair({ kind: 'downtime', id: 'gone' }, 25, search)).message).toMatch(
      /not in the shop any more/,
    );
  });
});

describe('asking for a date to promise', () => {
  /** The demo shop asked about an order of so many lines, some of them of a length of their own. */
  function typed(count: number, lengths: Record<number, number> = {}) {
    const { ask, shop } = open();
    const order = { ...shop().order[0]!, id: '9001', due: NOW + 30 * 86_400, revision: 0 } as never;
    const model = shop().line.find(({ id }) => id === someLine)!;
    const lines = Array.from({ length: count }, (_, i) => ({
      ...model,
      id: `9001/${i + 1}`,
      orderId: '9001',
      number: i + 1,
      lengthMm: lengths[i + 1] ?? model.lengthMm,
      revision: 0,
    })) as never;
    return { ask, promise: (jobId: string) => ask.promise(order, lines, jobId) };
  }

  it('names a date for each line that is typed, and says why where there is none', async () => {
    const { lines } = await typed(2, { 2: 9000 }).promise('a');
    expect(lines[0]!.safe!.end).toBeGreaterThan(NOW);
    expect(lines[0]!.safe!.makesLate).toEqual([]);
    expect(lines[1]).toMatchObject({ safe: null, message: expect.stringMatching(/\S+\./) });
  });

  it('answers twenty lines and says so of the others', async () => {
    const { lines } = await typed(21).promise('a');
    expect(lines.filter(({ safe }) => safe !== null)).toHaveLength(20);
    expect(lines[20]!.message).toMatch(/the first 20 lines of an order\. Save it/);
  });

  it('is answered no further once nobody waits for it, and the next question is answered', async () => {
    const { ask, promise } = typed(20);
    const [first, behind, next] = [promise('first'), promise('behind'), ask.why(someLine)];
    ask.stop('behind');
    expect((await laterRefusal(behind)).message).toMatch(/withdrawn/);
    ask.stop('first');
    expect((await first).lines.length).toBeLessThan(20);
    expect((await next).job).toBe(someLine);
  });
});
