import { setTimeout as sleep } from 'node:timers/promises';
import type { Call, InputOf, OutputOf, Reply } from '../../core/contract/call.ts';
import { contract } from '../../core/contract/index.ts';
import type { Command } from '../../core/edit/command.ts';
import { seenQueues } from '../../core/edit/stale.ts';
import { withChanges } from '../../core/shop/row-change.ts';
import type { Shop } from '../../core/shop/state.ts';

/** Between two presses, so that imports and backups come through beside them. */
const BREATHER_MS = 10;

/** What the app said was kept: it must be there however it ended. */
export interface Kept {
  /** Entries of the history and of the floor's log, by number, with what was asked. */
  readonly steps: number[];
  readonly facts: { id: number; command: Command }[];
  readonly orders: string[];
  readonly backups: string[];
}

/** Speaks to the app as a browser does. */
export class Client {
  readonly #origin: string;
  readonly #cookie: string;

  private constructor(origin: string, cookie: string) {
    this.#origin = origin;
    this.#cookie = cookie;
  }

  static async enter(address: string): Promise<Client> {
    const entered = await fetch(address, { redirect: 'manual' });
    return new Client(new URL(address).origin, (entered.headers.get('set-cookie') ?? '').split(';')[0] ?? '');
  }

  /** @returns null when it was refused. @throws when the app is gone */
  async ask<C extends Call>(def: C, input: InputOf<C>): Promise<OutputOf<C> | null> {
    const response = await fetch(`${this.#origin}/call/${def.name}`, {
      method: 'POST',
      headers: { 'content-type': 'application/json', cookie: this.#cookie, origin: this.#origin },
      body: JSON.stringify(input),
    });
    const reply = (await response.json()) as Reply<OutputOf<C>>;
    return reply.ok ? reply.value : null;
  }
}

/** Three at the desk and on the floor, and backups, all at once, until the app is gone. @param round makes numbers that no round before used */
export async function workUntilGone(client: Client, kept: Kept, round: number): Promise<void> {
  const shop = (await client.ask(contract.shopRead, {}))?.shop as Shop;
  const works = [
    imports(client, kept, round, shop),
    plans(client, kept, shop),
    floor(client, kept, shop),
    copies(client, kept),
  ];
  // The app is gone: each of them was waiting for an answer, and none came.
  await Promise.allSettled(works);
}

async function imports(client: Client, kept: Kept, round: number, shop: Shop): Promise<never> {
  const like = shop.line.find(({ status }) => status === 'open');
  if (!like) throw new Error('the demo shop has no open line');
  const { partId: part, materialId: material, gauge, colourId: colour } = like;
  for (let n = 0; ; n++) {
    const orders = Array.from({ length: 10 }, (_, k) => `K${round}-${n}-${k}`);
    const [known] = orders;
    const rows = orders.map(
      (id) => `${id},Kill test,${part},4,${material},${gauge},${colour},10 ft,2027-12-18`,
    );
    const text = ['order,customer,part,quantity,material,gauge,colour,length,due', ...rows].join('\n');
    const base64 = Buffer.from(text).toString('base64');
    const file = { kind: 'orders', fileName: `${known}.csv`, base64, answers: {} } as const;
    const read = await client.ask(contract.importRead, file);
    if (read?.counts.new !== orders.length) continue;
    const taken = await client.ask(contract.importTake, file);
    if (taken?.counts.new === orders.length) kept.orders.push(...orders);
  }
}

async function plans(client: Client, kept: Kept, read: Shop): Promise<never> {
  let shop = read;
  const shear = shop.machine.find(({ stage }) => stage === 'shear')?.id ?? '';
  const started = new Set(shop.record.map(({ id }) => id));
  const waiting = shop.line
    .filter(({ status }) => status === 'open')
    .map(({ id }) => `${id}:shear`)
    .filter((id) => !started.has(id))
    .slice(0, 20);
  for (let n = 0; ; n++) {
    waiting.push(...waiting.splice(0, 1 + (n % 3)));
    const made = await client.ask(contract.editApply, {
      command: {
        ...{ do: 'plan.replace', queues: { [shear]: [...waiting] }, label: `Plan ${n}` },
        seen: seenQueues(shop),
      },
    });
    if (made) shop = withChanges(shop, made.changes);
    if (made?.stepId) kept.steps.push(made.stepId);
    await sleep(BREATHER_MS);
  }
}

async function floor(client: Client, kept: Kept, shop: Shop): Promise<never> {
  const going = shop.record.find(({ end }) => end === null)?.id;
  const sheetId = shop.sheet[0]?.id ?? '';
  for (let n = 0; ; n++) {
    const at = Math.floor(Date.now() / 1000);
    const commands: Command[] = [
      { do: 'stock.receive', sheetId, pieces: 1, at, note: `tap ${n}` } as Command,
      ...(going
        ? [{ do: 'floor.count', operation: going, good: n % 2 === 0 ? 1 : -1, scrapped: 0 } as Command]
        : []),
    ];
    for (const command of commands) {
      const made = await client.ask(contract.editApply, { command });
      if (made?.factId) kept.facts.push({ id: made.factId, command });
    }
    await sleep(BREATHER_MS);
  }
}

async function copies(client: Client, kept: Kept): Promise<never> {
  for (;;) {
    const made = await client.ask(contract.backupsMake, {});
    if (made) kept.backups.push(made.name);
  }
}
