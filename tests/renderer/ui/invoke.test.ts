// @vitest-environment jsdom
import { afterEach, describe, expect, it, vi } from 'vitest';
import { contract } from '../../../core/contract/index.ts';
import { makeClient, takePush } from '../../../renderer/queries/client.ts';
import { AppError, invoke } from '../../../renderer/queries/invoke.ts';
import { change, type RowChange } from '../../../core/shop/row-change.ts';
import { keys } from '../../../renderer/queries/keys.ts';
import { copyOf, type ShopCopy } from '../../../renderer/queries/shop-copy.ts';
import { aColour, aShop } from '../../support/builders.ts';

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
    expect(await invoke(contract.editUndo, { stepId: null })).toEqual({ label: 'Move' });
    expect(call).toHaveBeenCalledWith('edit.undo', { stepId: null }, expect.stringMatching(/^desk \w+$/));
  });

  it('goes over loopback HTTP in a plain browser', async () => {
    const fetched = vi.fn(
      async (_address: string, _request: RequestInit) =>
        new Response(JSON.stringify({ ok: true, value: { label: null } })),
    );
    vi.stubGlobal('fetch', fetched);
    expect(await invoke(contract.editUndo, { stepId: null })).toEqual({ label: null });
    expect(fetched.mock.calls[0]?.[0]).toBe('/call/edit.undo');
    expect(fetched.mock.calls[0]?.[1].body).toBe('{"stepId":null}');
  });

  it('throws the host’s own sentence when it refuses', async () => {
    setBridge(async () => ({ ok: false, error: { code: 'busy', message: 'A search is going.' } }));
    const refusal = await invoke(contract.editUndo, { stepId: null }).catch((error: unknown) => error);
    expect(refusal).toBeInstanceOf(AppError);
    expect(refusal).toMatchObject({ code: 'busy', message: 'A search is going.' });
  });

  it('says what is kept and what to do when the host is gone', async () => {
    vi.stubGlobal('fetch', async () => {
      throw new TypeError('network');
    });
    await expect(invoke(contract.editUndo, { stepId: null })).rejects.toThrow(
      /does not answer\. Everything saved so far is kept; start Foldweek again/,
    );
  });
});

describe('news from the host', () => {
  const told = (revision: number, changes: readonly RowChange[] | null) =>
    ({ kind: 'changes', epoch: 'one', revision, changes }) as const;
  const fern = (revision = 0) =>
    change('colour', aColour({ revision }), aColour({ name: 'Fern', revision: revision + 1 }));

  it('moves the shop on by the changes it brings, and makes the history old', () => {
    const client = makeClient();
    client.setQueryData(keys.shop, copyOf({ epoch: 'one', revision: 4, shop: aShop() }));
    for (const key of [keys.history, keys.records]) client.setQueryData(key, {});
    takePush(client, told(5, [fern()]));
    const isOld = (key: readonly string[]) => client.getQueryState(key)?.isInvalidated;
    expect([isOld(keys.shop), isOld(keys.history), isOld(keys.records)]).toEqual([false, true, false]);
    const { shop } = client.getQueryData<ShopCopy>(keys.shop)!;
    expect(shop.colour.find(({ id }) => id === 'moss')?.name).toBe('Fern');
  });

  it('has the shop read again when a change was missed, or the host is another', () => {
    for (const missed of [told(6, [fern()]), { ...told(5, [fern()]), epoch: 'two' }, told(5, null)]) {
      const client = makeClient();
      client.setQueryData(keys.shop, copyOf({ epoch: 'one', revision: 4, shop: aShop() }));
      takePush(client, missed);
      expect(client.getQueryState(keys.shop)?.isInvalidated).toBe(true);
    }
  });
});
