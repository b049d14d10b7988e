import { describe, expect, it } from 'vitest';
import { decode } from '../../../core/schedule/decode.ts';
import { dispatch } from '../../../core/schedule/rules/dispatch.ts';
import { dueDateRule } from '../../../core/schedule/rules/edd.ts';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { hits } from '../../../core/part/girth.ts';
import { isShared } from '../../../core/part/tool-set.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import { lineOfOperation } from '../../../core/shop/order.ts';
import { rowKinds, type RowKind } from '../../../core/shop/state.ts';
import { demoShop, hoursOf, monday, openSeconds } from './demo-shop.ts';

const shop = demoShop();
const DAY = 86_400;
const ids = (kind: Exclude<RowKind, 'settings'>): Set<string> => new Set(shop[kind].map((row) => row.id));

describe('the demo shop', () => {
  it('has only rows that fit their schema, each id once', () => {
    expect(rowKinds.settings.safeParse(shop.settings).success).toBe(true);
    for (const kind of Object.keys(rowKinds) as RowKind[]) {
      if (kind === 'settings') continue;
      for (const row of shop[kind]) expect(rowKinds[kind].safeParse(row).error).toBeUndefined();
      expect(ids(kind).size, kind).toBe(shop[kind].length);
    }
  });

  it('has one shear, two brakes, 24 parts, and four gauges in ten colours', () => {
    expect(shop.machine.map((m) => m.stage).sort()).toEqual(['brake', 'brake', 'shear']);
    expect(shop.part).toHaveLength(24);
    expect(shop.colour).toHaveLength(10);
    expect(shop.material.flatMap((m) => m.gauges)).toHaveLength(4);
  });

  it('has 60 open orders with 160 lines, five of them rush, and more than 2,000 finished operations', () => {
    expect(shop.order.filter((o) => o.status === 'open')).toHaveLength(60);
    expect(shop.line).toHaveLength(160);
    expect(shop.order.filter((o) => o.rush)).toHaveLength(5);
    expect(shop.record.length).toBeGreaterThan(2000);
  });

  it('gives more importance to rush orders and to no others', () => {
    for (const order of shop.order) expect(order.importance > 1, order.id).toBe(order.rush);
  });

  it('is late with a few orders on the Monday, waits for a release with some, and promises none before its release', () => {
    expect(shop.order.filter((o) => o.due < monday)).toHaveLength(4);
    expect(shop.order.filter((o) => o.release !== null && o.release > monday).length).toBeGreaterThan(5);
    for (const order of shop.order) expect(order.release ?? 0).toBeLessThan(order.due - DAY);
    expect(Math.max(...shop.order.map((o) => o.due))).toBeLessThan(monday + 21 * DAY);
  });

  it('names nothing that is not there', () => {
    const stocked = new Set(shop.sheet.map((s) => `${s.materialId} ${s.gauge} ${s.colourId}`));
    for (const line of shop.line) {
      expect(ids('order')).toContain(line.orderId);
      expect(ids('part')).toContain(line.partId);
      expect(stocked).toContain(`${line.materialId} ${line.gauge} ${line.colourId}`);
    }
    for (const record of shop.record) {
      expect(ids('machine')).toContain(record.machineId);
      expect(ids('part')).toContain(record.partId);
    }
    for (const machine of shop.machine) expect(ids('calendar')).toContain(machine.calendarId);
    for (const downtime of shop.downtime) expect(ids('machine')).toContain(downtime.machineId);
    for (const queue of shop.queue) expect(ids('machine')).toContain(queue.id);
  });

  it('names parts, colours and gauges that exist in its changeover exceptions and machine states', () => {
    const known = {
      profile: ids('part'),
      colour: ids('colour'),
      material: ids('material'),
      gauge: new Set(shop.material.flatMap((m) => m.gauges.map((g) => g.label))),
      tools: new Set<string>(),
      hemming: new Set<string>(),
    };
    for (const machine of shop.machine) {
      for (const { attribute, from, to } of machine.changeover.exceptions) {
        expect(known[attribute]).toContain(from);
        expect(known[attribute]).toContain(to);
      }
      for (const [attribute, value] of Object.entries(machine.state ?? {}))
        expect(known[attribute as keyof typeof known]).toContain(value);
    }
  });

  it('can make every line', () => {
    expect(operationsOf(shop).unplannable).toEqual([]);
  });

  it('has tools on both brakes: hems, straight punches and goosenecks are all used, and one die fits both', () => {
    const sets = operationsOf(shop).operations.flatMap((o) => o.machines.flatMap(({ tools }) => tools ?? []));
    for (const id of ['B1', 'B2']) {
      const own = sets.filter(({ die }) => die.machineIds.join() === id);
      expect(own.some(({ hemming }) => hemming !== null)).toBe(true);
      expect(new Set(own.map(({ punch }) => punch.gooseneck))).toEqual(new Set([true, false]));
    }
    expect(shop.tool.filter(isShared).map(({ id }) => id)).toEqual(['V16']);
  });

  it('has long lines that only the long brake takes, and shorter ones that both take', () => {
    const { operations } = operationsOf(shop);
    const brakes = operations
      .filter((o) => o.stage === 'brake')
      .map((o) => o.machines.map((m) => m.id).join());
    expect(new Set(brakes)).toEqual(new Set(['B1', 'B1,B2']));
  });

  it('has blanks of the late orders, and of no others, waiting for a brake', () => {
    const late = new Set(shop.order.filter((o) => o.due < monday).map((o) => o.id));
    const lines = shop.line.filter((l) => late.has(l.orderId)).map((l) => l.id);
    const started = shop.record.map((r) => lineOfOperation(r.id)).filter((id) => ids('line').has(id));
    expect(started.sort()).toEqual(lines.sort());
  });

  it('sells one part flat, without a hit', () => {
    expect(shop.part.filter((p) => hits(p.profile) === 0)).toHaveLength(1);
  });
});

describe('the load of the demo shop over its three weeks', () => {
  const { operations } = operationsOf(shop);
  const end = monday + 21 * DAY;
  const open = (id: string): number => openSeconds(hoursOf(shop, id, monday, end), monday, end);
  const asked = (stage: string, only?: string): number =>
    operations
      .filter(
        (o) =>
          o.stage === stage &&
          (only === undefined || (o.machines.length === 1 && o.machines[0]?.id === only)),
      )
      .reduce((sum, o) => sum + Math.min(...o.machines.map((m) => m.seconds)), 0);

  it('asks the brakes for 75 to 90 % of their open hours, changeovers not counted', () => {
    const share = asked('brake') / (open('B1') + open('B2'));
    expect(share).toBeGreaterThan(0.75);
    expect(share).toBeLessThan(0.9);
  });

  it('asks the shear for less of its hours than the brakes of theirs', () => {
    expect(asked('shear') / open('S1')).toBeLessThan(asked('brake') / (open('B1') + open('B2')) - 0.1);
  });

  it('asks the long brake alone for less than it has', () => {
    expect(asked('brake', 'B1') / open('B1')).toBeLessThan(0.75);
  });

  it('ends some lines late in due-date order that were not late before, though far from most', () => {
    const built = toProblem(shop, monday);
    if (!built.ok) throw new Error(JSON.stringify(built.issues));
    const { problem } = built.value;
    const plan = decode(problem, dispatch(problem, dueDateRule(problem)));
    if (!plan.ok) throw new Error(JSON.stringify(plan.issues));
    const { ends } = plan.value;
    const late = problem.input.jobs.filter((j) => j.due! >= monday && (ends[j.id] ?? 0) > j.due!);
    expect(late.length).toBeGreaterThanOrEqual(10);
    expect(late.length).toBeLessThan(60);
  });
});
