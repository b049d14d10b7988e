import { join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { contract } from '../../core/contract/index.ts';
import { makeAnswers } from '../../electron/host/answers.ts';
import { makeServe, requestNames, type Answers } from '../../electron/host/serve.ts';
import { Refused } from '../../electron/refused.ts';
import { Backups } from '../../electron/service/backups.ts';
import { nodeSolver } from '../../electron/solver/launch.ts';
import { aColour, aShop } from '../support/builders.ts';
import {
  appFolder,
  fixedClock,
  keptPushes,
  memoryLog,
  openTestStore,
  storeWith,
  tempFolder,
} from './support.ts';

function start(store = storeWith(aShop()), change: Partial<Answers> = {}) {
  const log = memoryLog();
  const pushes = keptPushes(log);
  const backups = new Backups({ store, clock: fixedClock(), pushes, log });
  const answers = makeAnswers({
    kind: 'browser',
    version: '1.2.3',
    appFolder,
    store,
    clock: fixedClock(),
    pushes,
    log,
    backups,
    launchSolver: nodeSolver(join(appFolder, 'electron/solver/solver.ts')),
    notice: null,
    printPdf: null,
  });
  return { log, pushes, serve: makeServe({ ...answers, ...change }, log, () => store.kept) };
}

describe('a request', () => {
  it('is answered by its name, one handler each', () => {
    expect(requestNames).toEqual([...new Set(requestNames)]);
    expect(requestNames).toContain('shop.read');
    expect(requestNames).toHaveLength(Object.keys(contract).length);
  });

  it('that nobody knows is refused by name', async () => {
    const { serve } = start();
    expect(await serve('shop.delete', {})).toEqual({
      ok: false,
      error: { code: 'bad-input', message: 'There is no request named “shop.delete”.' },
    });
    expect(await serve('constructor', {})).toMatchObject({ ok: false });
  });

  it('with a wrong or surplus field is refused, naming it', async () => {
    const { serve } = start();
    const reply = await serve('edit.apply', {
      command: { do: 'operation.pin', operations: ['nonsense'], seen: {} },
    });
    expect(reply).toMatchObject({ ok: false, error: { code: 'bad-input' } });
    expect(await serve('shop.read', { surplus: 1 })).toMatchObject({
      ok: false,
      error: { code: 'bad-input' },
    });
  });

  it('that is wrong all over is told in one sentence, by the shape it comes closest to', async () => {
    const { serve } = start();
    const row = { ...aColour(), name: '', hex: 'green', revision: -1, ['x'.repeat(250)]: 1 };
    const reply = await serve('edit.apply', { command: { do: 'row.save', kind: 'colour', row } });
    const message = reply.ok ? '' : reply.error.message;
    expect(message).toMatch(
      /^The request does not fit \(command.row.name: must not be empty; .*, and 1 more place\)\. Nothing was changed/,
    );
    expect(message.length).toBeLessThan(900);
  });

  it('that cannot be kept as it is, is refused before anything is done', async () => {
    const { serve } = start();
    const row = aColour({ id: 'new', name: 'half \ud800' });
    const reply = await serve('edit.apply', { command: { do: 'row.save', kind: 'colour', row } });
    expect(reply.ok ? '' : reply.error.message).toMatch(
      /a character that cannot be kept. Nothing was changed/,
    );
  });

  it('that the shop speaks against keeps its sentence', async () => {
    const { serve } = start();
    const reply = await serve('edit.apply', {
      command: { do: 'row.save', kind: 'colour', row: aColour({ revision: 9 }) },
    });
    expect(reply).toMatchObject({
      ok: false,
      error: { code: 'conflict', conflicts: [{ mine: expect.anything(), theirs: expect.anything() }] },
    });
    if (!reply.ok) expect(reply.error.message).toMatch(/changed meanwhile/);
  });

  it('that meets a bug is told calmly and logged in full', async () => {
    const bug = () => {
      throw new TypeError('x is undefined');
    };
    const { serve, log } = start(undefined, { shopRead: bug });
    expect(await serve('shop.read', {})).toEqual({
      ok: false,
      error: {
        code: 'internal',
        message: expect.stringMatching(/^Something went wrong.*Nothing was changed/),
      },
    });
    expect(log.lines.join()).toMatch(/shop.read failed.*x is undefined/);
  });

  it('that meets a bug after something was kept does not say that nothing was', async () => {
    const store = storeWith(aShop());
    const { serve } = start(store, {
      shopRead() {
        store.run('put', ({ rows }) => rows.put('colour', aColour({ revision: 9 })));
        throw new TypeError('the screen was gone');
      },
    });
    const reply = await serve('shop.read', {});
    expect(reply).toMatchObject({ ok: false, error: { code: 'internal' } });
    if (!reply.ok) expect(reply.error.message).toMatch(/may have been kept all the same: look before/);
  });

  it('that was kept is told so, also where a screen cannot hear of it', async () => {
    const { serve, log, pushes } = start();
    pushes.listen(() => {
      throw new Error('Render frame was disposed');
    });
    const reply = await serve('edit.apply', {
      command: { do: 'operation.pin', operations: ['1042/1:shear'], seen: {} },
    });
    expect(reply).toMatchObject({ ok: true });
    expect(log.lines.join()).toMatch(/a screen could not be told.*disposed/);
  });

  it('with a code of its own keeps it', async () => {
    const busy = () => {
      throw new Refused('busy', 'Wait.');
    };
    expect(await start(undefined, { shopRead: busy }).serve('shop.read', {})).toEqual({
      ok: false,
      error: { code: 'busy', message: 'Wait.' },
    });
  });
});

describe('the host', () => {
  it('tells where it runs and whether the file is fresh', async () => {
    const file = join(tempFolder(), 'fresh.db');
    const { serve } = start(openTestStore(file));
    expect(await serve('app.status', {})).toMatchObject({
      ok: true,
      value: {
        host: 'browser',
        version: '1.2.3',
        dataFile: file,
        fresh: true,
        fixedClock: true,
        notice: null,
      },
    });
    expect(await serve('app.begin', { with: 'demo' })).toEqual({ ok: true, value: {} });
    expect(await serve('app.status', {})).toMatchObject({ value: { fresh: false } });
  });

  it('tells of rows that could not be read, and lists them', async () => {
    const file = join(tempFolder(), 'spoilt.db');
    storeWith(aShop(), file).close();
    const connection = new Database(file);
    connection.exec(`update "order" set status = 'lost' where id = '1042'`);
    connection.close();
    const { serve } = start(openTestStore(file));
    const status = await serve('app.status', {});
    expect(status).toMatchObject({
      value: { notice: expect.stringMatching(/^3 rows of the data file could not be read.*set aside/) },
    });
    expect(await serve('aside.read', {})).toMatchObject({
      value: expect.arrayContaining([expect.objectContaining({ kind: 'order', rowId: '1042' })]),
    });
  });

  it('reads the whole shop, edits it and undoes the edit', async () => {
    const { serve } = start();
    const before = await serve('shop.read', {});
    expect(before).toMatchObject({
      ok: true,
      value: { revision: 1, shop: { order: aShop().order, line: aShop().line } },
    });
    await serve('edit.apply', { command: { do: 'operation.pin', operations: ['1042/1:shear'], seen: {} } });
    expect(await serve('shop.read', {})).toMatchObject({
      value: { shop: { pin: [{ id: '1042/1:shear' }] } },
    });
    expect(await serve('edit.undo', { stepId: null })).toEqual({
      ok: true,
      value: { label: 'Pin 1042/1 shearing' },
    });
    expect(await serve('shop.read', {})).toMatchObject({ value: { shop: { pin: [] } } });
  });

  it('has no search to show at first, and cannot print a PDF from a browser', async () => {
    const { serve } = start();
    expect(await serve('search.read', {})).toEqual({ ok: true, value: null });
    expect(
      await serve('print.pdf', { what: 'dispatch', machineId: null, days: 5, drawings: false }),
    ).toMatchObject({
      ok: false,
      error: { code: 'unavailable' },
    });
  });
});
