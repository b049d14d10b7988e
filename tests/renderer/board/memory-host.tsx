import { QueryClientProvider, type QueryClient } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { invert, withChanges, type RowChange } from '../../../core/shop/row-change.ts';
import { sentence, type Conflict } from '../../../core/result.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { makeClient, takePush } from '../../../renderer/queries/client.ts';
import { NOW } from '../../support/builders.ts';

interface Step {
  readonly id: number;
  readonly label: string;
  readonly changes: readonly RowChange[];
}

/** A host that keeps the shop in memory and answers what the screens ask, by the planner's own commands. */
export function memoryHost(start: Shop) {
  let shop = start;
  let stepId = 0;
  const undo: Step[] = [];
  const redo: Step[] = [];
  const client: QueryClient = makeClient();
  let revision = 1;
  const changed = (changes: readonly RowChange[]) =>
    takePush(client, { kind: 'changes', epoch: 'memory', revision: (revision += 1), changes });
  const listed = (steps: Step[]) => steps.toReversed().map(({ id, label }) => ({ id, label, at: NOW }));
  const step = (from: Step[], to: Step[], changesOf: (step: Step) => readonly RowChange[]) => {
    const last = from.pop();
    if (!last) return { label: null };
    shop = withChanges(shop, changesOf(last));
    to.push(last);
    changed(changesOf(last));
    return { label: last.label };
  };
  const answers: Record<string, (input: never) => unknown> = {
    'app.status': () => ({
      host: 'desktop',
      version: '0',
      dataFile: '',
      fresh: false,
      now: NOW,
      fixedClock: true,
      notice: null,
    }),
    'shop.read': () => ({ epoch: 'memory', revision, shop }),
    'search.read': () => null,
    'edit.history': () => ({ undo: listed(undo), redo: listed(redo) }),
    'archive.customers': () => ({ names: [...new Set(shop.order.map(({ customer }) => customer))] }),
    'edit.undo': () => step(undo, redo, ({ changes }) => invert(changes)),
    'edit.redo': () => step(redo, undo, ({ changes }) => changes),
    'edit.apply': ({ command }: { command: Command }) => {
      const edit = applyCommand(shop, command);
      if (!edit.ok)
        throw Object.assign(new Error(sentence(edit.issues)), {
          conflicts: edit.issues.flatMap(({ conflict }) => conflict ?? []),
        });
      shop = withChanges(shop, edit.value.changes);
      redo.length = 0;
      undo.push({ ...edit.value, id: (stepId += 1) });
      changed(edit.value.changes);
      return { ...edit.value, stepId, factId: null, epoch: 'memory', revision };
    },
  };
  const bridge = {
    onPush: () => () => {},
    call: async (name: string, input: unknown) => {
      try {
        return { ok: true, value: answers[name]?.(input as never) };
      } catch (error) {
        const { message, conflicts = [] } = error as Error & { conflicts?: readonly Conflict[] };
        return {
          ok: false,
          error: { code: conflicts.length > 0 ? 'conflict' : 'refused', message, conflicts },
        };
      }
    },
  };
  Object.defineProperty(window, 'bridge', { value: bridge, configurable: true });
  const Host = ({ children }: { children: ReactNode }) => (
    <QueryClientProvider client={client}>{children}</QueryClientProvider>
  );
  return { Host, shop: () => shop };
}

/** jsdom lays nothing out: every element is told it is this large. */
export function stubSizes(width: number, height: number): void {
  window.ResizeObserver = class implements ResizeObserver {
    readonly #tell: ResizeObserverCallback;
    constructor(tell: ResizeObserverCallback) {
      this.#tell = tell;
    }
    observe() {
      this.#tell([{ contentRect: { width, height } } as ResizeObserverEntry], this);
    }
    unobserve() {}
    disconnect() {}
  };
}
