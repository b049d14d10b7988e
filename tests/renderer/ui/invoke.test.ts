// @vitest-environment jsdom
import { afterEach, describe, expect, it, vi } from 'vitest';
import { contract } from '../../../core/contract/index.ts';
import { makeClient, takePush } from '../../../renderer/queries/client.ts';
import { AppError, invoke } from '../../../renderer/queries/invoke.ts';
import { keys } from '../../../renderer/queries/keys.ts';

const setBridge = (call: ((name: string, input: unknown) => Promise<unknown>) | undefined) =>
  Object.defineProperty(window, 'bridge', {
    value: call && { call, onPush: () => () => {} },
    configurable: true,
  });

afterEach(() => {
  setBridge(undefined);
  vi.unstubAllGlobals();
});

describe('asking the host', () => {
  it('goes over the bridge in the desktop window', async () => {
    const call = vi.fn(async () => ({ ok: true, value: { label: 'Move' } }));
    setBridge(call);
    expect(await invoke(contract.editUndo, {})).toEqual({ label: 'Move' });
    expect(call).toHaveBeenCalledWith('edit.undo', {});
  });

  it('goes over loopback HTTP in a plain browser', async () => {
    const fetched = vi.fn(
      async (_address: string, _request: RequestInit) =>
        new Response(JSON.stringify({ ok: true, value: { label: null } })),
    );
    vi.stubGlobal('fetch', fetched);
    expect(await invoke(contract.editUndo, {})).toEqual({ label: null });
    expect(fetched.mock.calls[0]?.[0]).toBe('/call/edit.undo');
    expect(fetched.mock.calls[0]?.[1].body).toBe('{}');
  });

  it('throws the host’s own sentence when it refuses', async () => {
    setBridge(async () => ({ ok: false, error: { code: 'busy', message: 'A search is going.' } }));
    const refusal = await invoke(contract.editUndo, {}).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AppError);
    expect(refusal).toMatchObject({ code: 'busy', message: 'A search is going.' });
  });

  it('says what is kept and what to do when the host is gone', async () => {
    vi.stubGlobal('fetch', async () => {
      throw new TypeError('network');
    });
    await expect(invoke(contract.editUndo, {})).rejects.toThrow(
      /does not answer\. Everything saved so far is kept; start Foldweek again/,
    );
  });
});

describe('news from the host', () => {
  it('makes the shop and its history old when rows change, and records only when one of them does', () => {
    const client = makeClient();
    for (const key of [keys.shop, keys.history, keys.records]) client.setQueryData(key, {});
    takePush(client, { kind: 'changed', rows: ['queue'] });
    const isOld = (key: readonly string[]) => client.getQueryState(key)?.isInvalidated;
    expect([isOld(keys.shop), isOld(keys.history), isOld(keys.records)]).toEqual([true, true, false]);
    takePush(client, { kind: 'changed', rows: ['record'] });
    expect(isOld(keys.records)).toBe(true);
  });
});
