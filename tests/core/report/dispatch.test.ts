import { NO_LOT } from '../../../core/material/lot.ts';
import { describe, expect, it } from 'vitest';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import type { Schedule, ScheduledOperation } from '../../../core/schedule/problem.ts';
import type { Machine } from '../../../core/shop/machine.ts';
import { operationsOf } from '../../../core/planning/operations.ts';
import type { OrderLine } from '../../../core/shop/order.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { instant } from '../../../core/units/brand.ts';

/** One shear, one brake, three lines of two flat legs; the day begins at 1 000 000. */
const DAY = 1_000_000;
const machine = (id: string, stage: Machine['stage'], more: Partial<Machine>): Machine => ({
  id,
  name: id === 'S1' ? 'Shear' : 'Brake',
  stage,
  maxLengthMm: 3000,
  maxThicknessMm: 2,
  tonnes: stage === 'brake' ? 60 : null,
  dieOpeningMm: stage === 'brake' ? 8 : null,
  backGaugeMm: stage === 'shear' ? { min: 10, max: 900 } : null,
  minStripMm: stage === 'shear' ? 25 : null,
  crew: 1,
  calendarId: 'day',
  changeover: { combine: 'sum', attributes: {}, exceptions: [] },
  standards: {},
  betweenFramesMm: null,
  timesEdition: 1,
  state: null,
  revision: 0,
  ...more,
});
const line = (number: number, colourId: string): OrderLine => ({
  id: `7/${number}`,
  orderId: '7',
  number,
  partId: 'angle',
  materialId: 'galv',
  gauge: '24',
  colourId,
  ...NO_LOT,
  mixLots: false,
  lengthMm: 2000,
  quantity: 10,
  overrun: 0,
  status: 'open',
  makeUpFor: null,
  due: null,
  release: null,
  importance: null,
  note: '',
  revision: 0,
});
const shop: Shop = {
  settings: {
    id: 'shop',
    name: 'Test shop',
    timeZone: 'America/Chicago',
    units: 'in',
    weights: { lateness: 1, changeover: 1, flow: 0, stability: 0, material: 0 },
    frozenHours: 0,
    transferShare: 1,
    crewLimit: null,
    girthRule: 'outsideSum',
    partRules: {},
    currency: null,
    publishing: 'always',
    backupFolder: null,
    askWho: false,
    decimals: 'point',
    remnants: null,
    extraBlanks: { setUp: 0, scrapShare: 0 },
    stockKnows: null,
    awaitMetal: true,
    setUpDone: [],
    revision: 0,
  },
  material: [
    {
      id: 'galv',
      name: 'Galvanized',
      metal: 'galvanized',
      tensileMpa: 400,
      kFactor: 0.45,
      gauges: [{ label: '24', thicknessMm: 0.7, kgPerM2: 5.6 }],
      deductions: [],
      temper: null,
      revision: 0,
    },
  ],
  colour: [
    { id: 'moss', name: 'Moss', hex: '#56673f', revision: 0 },
    { id: 'red', name: 'Barn red', hex: '#8c2f28', revision: 0 },
  ],
  sheet: ['moss', 'red'].map((colourId) => ({
    id: `sheet-${colourId}`,
    materialId: 'galv',
    gauge: '24',
    colourId,
    ...NO_LOT,
    widthMm: 1219,
    lengthMm: 2440,
    form: 'sheet',
    trimMm: 0,
    costCents: 8000,
    onHand: 40,
    revision: 0,
  })),
  part: [
    {
      id: 'angle',
      name: 'Angle',
      profile: {
        flangesMm: [60, 40],
        bends: [{ angle: 90, direction: 'up', radiusMm: null }],
        startHem: null,
        endHem: null,
        measured: 'outside',
        paintedSide: 'up',
      },
      lengthMm: 2000,
      bendOrder: null,
      family: null,
      extraBlanks: null,
      steps: [],
      note: '',
      revision: 0,
    },
  ],
  calendar: [],
  machine: [
    machine('S1', 'shear', {
      changeover: { combine: 'sum', attributes: { colour: 360, gauge: 480 }, exceptions: [] },
      state: { colour: 'moss', gauge: '24' },
    }),
    machine('B1', 'brake', {
      crew: 2,
      changeover: { combine: 'sum', attributes: { profile: 600 }, exceptions: [] },
    }),
  ],
  tool: [],
  downtime: [],
  absence: [],
  order: [
    {
      id: '7',
      customer: 'Tin Lantern Roofing',
      release: null,
      due: DAY + 3000,
      importance: 1,
      rush: true,
      status: 'open',
      closedAt: null,
      note: '',
      revision: 0,
    },
  ],
  line: [line(1, 'moss'), line(2, 'red'), line(3, 'moss')],
  queue: [],
  published: [],
  pin: [],
  changeover: [],
  record: [],
  learned: [],
  movement: [],
  cutList: [],
  cutCount: [],
  otherName: [],
  keptList: [],
  delivery: [],
  fileLayout: [],
};

const operations = new Map(operationsOf(shop).operations.map((o) => [o.id, o]));

const step = (job: string, index: 0 | 1, start: number, end: number, changeover = 0): ScheduledOperation => ({
  job,
  index,
  operation: `${job}:${index === 0 ? 'shear' : 'brake'}`,
  machine: index === 0 ? 'S1' : 'B1',
  changeoverStart: DAY + start - changeover,
  changeoverSeconds: changeover,
  start: DAY + start,
  end: DAY + end,
});
// Queue of the shear: 7/1 and 7/3 in moss, then six minutes to change to red, then 7/2.
const schedule: Schedule = {
  queues: { S1: ['7/1:shear', '7/3:shear', '7/2:shear'], B1: ['7/1:brake', '7/3:brake', '7/2:brake'] },
  operations: [
    step('7/1', 0, 0, 500),
    step('7/3', 0, 500, 1000),
    step('7/2', 0, 1360, 1860, 360),
    step('7/1', 1, 500, 1500),
    step('7/3', 1, 1500, 2500),
    step('7/2', 1, 2500, 3500),
  ],
  ends: { '7/1': DAY + 1500, '7/3': DAY + 2500, '7/2': DAY + 3500 },
  terms: { weightedTardiness: 500, changeover: 360, makespan: 3500, flowTime: 7500, stability: 0 },
  objective: 860,
};
const plan = { operations, schedule };
const whole = dispatchLists(shop, plan, instant(DAY), instant(DAY + 86_400));
const [shear, brake] = whole;

describe('a dispatch list', () => {
  it('lists a machine’s queue in order, with the very times of the plan', () => {
    const rows = whole.flatMap((list) => list.runs.flatMap((run) => run.rows));
    expect(rows.map((r) => [r.operationId, r.start, r.end])).toEqual(
      schedule.operations.map((o) => [o.operation, o.start, o.end]),
    );
    expect(shear?.runs.flatMap((run) => run.rows.map((r) => r.position))).toEqual([1, 2, 3]);
  });

  it('breaks into runs at changeovers and says what all pieces of a run share', () => {
    expect(shear?.runs.map((run) => [run.title, run.rows.length])).toEqual([
      ['24 ga Moss, Galvanized', 2],
      ['24 ga Barn red, Galvanized', 1],
    ]);
    expect(brake?.runs.map((run) => run.title)).toEqual(['24 ga, Galvanized, Angle']);
  });

  it('says what to change before a run, from what to what, and how long it takes', () => {
    expect(shear?.runs.map((run) => run.changeover)).toEqual([
      null,
      {
        start: DAY + 1000,
        seconds: 360,
        firstPiece: false,
        steps: [{ attribute: 'colour', from: 'Moss', to: 'Barn red' }],
      },
    ]);
  });

  it('gives the blank that is cut, who is needed, and where the pieces go next', () => {
    const row = shear?.runs[0]?.rows[0];
    expect(row?.blank.girthMm).toBeCloseTo(100, 9); // 60 + 40 outside, added up
    expect(row?.next).toEqual({ machineName: 'Brake', start: DAY + 500 });
    expect(brake?.runs[0]?.rows[0]).toMatchObject({ people: 2, next: null });
  });

  it('calls a line late on every machine when its last step ends after its due date', () => {
    const tardy = (list: typeof shear) => list?.runs.flatMap((run) => run.rows.map((r) => r.tardiness));
    expect(tardy(shear)).toEqual([0, 0, 500]);
    expect(tardy(brake)).toEqual([0, 0, 500]);
  });

  it('keeps queue places and the setup when it begins in the middle of a queue', () => {
    const [late] = dispatchLists(shop, plan, instant(DAY + 1000), instant(DAY + 86_400));
    expect(late?.runs.map((run) => run.rows.map((r) => r.position))).toEqual([[3]]);
    expect(late?.runs[0]?.changeover?.steps[0]?.from).toBe('Moss');
  });

  it('leaves out what ends as the period begins and what begins as it ends', () => {
    const [list] = dispatchLists(shop, plan, instant(DAY + 500), instant(DAY + 1000));
    expect(list?.runs.flatMap((run) => run.rows.map((r) => r.line.id))).toEqual(['7/3']);
  });

  it('comes for the shears first, whatever their codes', () => {
    const turned = { ...shop, machine: shop.machine.toReversed() };
    expect(dispatchLists(turned, plan, instant(DAY), instant(DAY + 1)).map((l) => l.machine.id)).toEqual([
      'S1',
      'B1',
    ]);
  });

  it('is there for an idle machine too, without rows', () => {
    const empty = { ...plan, schedule: { ...schedule, operations: [], ends: {} } };
    expect(
      dispatchLists(shop, empty, instant(DAY), instant(DAY + 1)).map((list) => [list.machine.id, list.runs]),
    ).toEqual([
      ['S1', []],
      ['B1', []],
    ]);
  });
});
