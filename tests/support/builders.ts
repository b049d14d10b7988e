import { NO_LOT } from '../../core/material/lot.ts';
import { NO_EXTRA_BLANKS } from '../../core/part/extra-blanks.ts';
import { usualLine, usualOrder } from '../../core/shop/order.ts';
import type { RowKind, RowOf, Shop } from '../../core/shop/state.ts';
import { toInstant } from '../../core/time/wall.ts';
import type { Instant } from '../../core/units/brand.ts';

/** A small invented shop, row by row: each builder gives a valid row, and a test says only what matters to it. */

export const ZONE = 'America/Chicago';
/** A Monday, before the shift. */
export const NOW: Instant = toInstant('2026-11-30', '06:00', ZONE);
/** An instant on the shop's wall clock. */
export const at = (date: string, clock = '17:00'): Instant => toInstant(date, clock, ZONE);

export type With<K extends RowKind> = Partial<RowOf<K>>;

export const someSettings = (own: With<'settings'> = {}): RowOf<'settings'> => ({
  id: 'shop',
  name: 'Test shop',
  timeZone: ZONE,
  units: 'in',
  currency: null,
  weights: { lateness: 1, changeover: 1, flow: 0.01, stability: 0, material: 0 },
  frozenHours: 0,
  transferShare: 1,
  crewLimit: null,
  girthRule: 'computed',
  partRules: {},
  publishing: 'always',
  backupFolder: null,
  askWho: false,
  decimals: 'point',
  remnants: null,
  extraBlanks: NO_EXTRA_BLANKS,
  stockKnows: null,
  awaitMetal: true,
  setUpDone: [],
  revision: 0,
  ...own,
});

export const aMaterial = (own: With<'material'> = {}): RowOf<'material'> => ({
  id: 'galv',
  name: 'Galvanized',
  metal: 'galvanized',
  tensileMpa: 330,
  temper: null,
  kFactor: 0.38,
  gauges: [
    { label: '24', thicknessMm: 0.701, kgPerM2: 5.64 },
    { label: '26', thicknessMm: 0.551, kgPerM2: 4.42 },
  ],
  deductions: [],
  revision: 0,
  ...own,
});

export const aColour = (own: With<'colour'> = {}): RowOf<'colour'> => ({
  id: 'moss',
  name: 'Moss green',
  hex: '#4a5d43',
  revision: 0,
  ...own,
});

export const aSheet = (own: With<'sheet'> = {}): RowOf<'sheet'> => ({
  id: 'galv-24-moss',
  materialId: 'galv',
  gauge: '24',
  colourId: 'moss',
  ...NO_LOT,
  widthMm: 1219.2,
  lengthMm: 3048,
  form: 'sheet',
  trimMm: 0,
  costCents: 6200,
  onHand: 40,
  revision: 0,
  ...own,
});

/** An L of 100 mm legs. */
export const aPart = (own: With<'part'> = {}): RowOf<'part'> => ({
  id: 'corner',
  name: 'Corner',
  profile: {
    flangesMm: [100, 100],
    bends: [{ angle: 90, direction: 'up', radiusMm: null }],
    startHem: null,
    endHem: null,
    measured: 'outside',
    paintedSide: 'up',
  },
  lengthMm: 2540,
  bendOrder: null,
  family: null,
  extraBlanks: null,
  steps: [],
  note: '',
  revision: 0,
  ...own,
});

export const aCalendar = (own: With<'calendar'> = {}): RowOf<'calendar'> => ({
  id: 'day',
  name: 'Day shift',
  shifts: [
    {
      name: 'Day',
      days: [1, 2, 3, 4, 5],
      start: '07:00',
      end: '15:30',
      breaks: [{ start: '11:30', end: '12:00' }],
    },
  ],
  closures: [{ name: 'Inventory', from: '2026-12-24', to: '2026-12-25' }],
  overtime: [{ name: 'Catching up', date: '2026-12-05', start: '07:00', end: '11:00' }],
  revision: 0,
  ...own,
});

/** What machines of all kinds have alike. */
export const machine = {
  maxLengthMm: 3050,
  maxThicknessMm: 1.6,
  crew: 1,
  calendarId: 'day',
  standards: {},
  betweenFramesMm: null,
  timesEdition: 1,
  state: null,
  revision: 0,
};

export const aShear = (own: With<'machine'> = {}): RowOf<'machine'> => ({
  ...machine,
  id: 'S1',
  name: 'Shear',
  stage: 'shear',
  tonnes: null,
  dieOpeningMm: null,
  backGaugeMm: { min: 10, max: 1000 },
  minStripMm: 20,
  changeover: { combine: 'sum', attributes: { gauge: 600, colour: 240 }, exceptions: [] },
  ...own,
});

export const aBrake = (own: With<'machine'> = {}): RowOf<'machine'> => ({
  ...machine,
  id: 'B1',
  name: 'Brake',
  stage: 'brake',
  tonnes: 60,
  dieOpeningMm: 12,
  backGaugeMm: null,
  minStripMm: null,
  changeover: {
    combine: 'max',
    attributes: { profile: 900, gauge: 300 },
    exceptions: [{ attribute: 'gauge', from: '24', to: '26', seconds: 120 }],
  },
  standards: { firstPiece: 90 },
  state: { gauge: '24', profile: 'corner' },
  ...own,
});

export const aDowntime = (own: With<'downtime'> = {}): RowOf<'downtime'> => ({
  id: 'service',
  machineId: 'B1',
  from: at('2026-12-02', '07:00'),
  to: at('2026-12-02', '09:00'),
  reason: 'Service',
  revision: 0,
  ...own,
});

export const anOrder = (own: With<'order'> = {}): RowOf<'order'> => ({
  id: '1042',
  customer: 'Invented Roofing',
  due: at('2026-12-04'),
  ...usualOrder,
  ...own,
});

/** Line 1 of order 1042 unless said otherwise; its id follows from order and number. */
export function aLine(own: With<'line'> = {}): RowOf<'line'> {
  const { orderId = '1042', number = 1 } = own;
  return {
    ...usualLine,
    id: `${orderId}/${number}`,
    orderId,
    number,
    partId: 'corner',
    materialId: 'galv',
    gauge: '24',
    colourId: 'moss',
    lengthMm: 2540,
    quantity: 20,
    ...own,
  };
}

export const aQueue = (own: With<'queue'> = {}): RowOf<'queue'> => ({
  id: 'S1',
  operations: ['1042/1:shear'],
  revision: 0,
  ...own,
});

export const aPin = (own: With<'pin'> = {}): RowOf<'pin'> => ({ id: '1042/1:shear', revision: 0, ...own });

/** Finished: an hour's shearing on the Monday morning. */
export const aRecord = (own: With<'record'> = {}): RowOf<'record'> => ({
  id: '1042/1:shear',
  machineId: 'S1',
  partId: 'corner',
  materialId: 'galv',
  gauge: '24',
  colourId: 'moss',
  lengthMm: 2540,
  quantity: 20,
  good: 19,
  scrapped: 1,
  start: at('2026-11-30', '07:00'),
  end: at('2026-11-30', '08:00'),
  changeoverSeconds: null,
  who: [],
  pauses: [],
  estimatedSeconds: 3300,
  revision: 0,
  ...own,
});

/** Long hits, found to take longer than thought. */
export const aLearned = (own: With<'learned'> = {}): RowOf<'learned'> => ({
  id: 'B1.hitLong.1',
  machineId: 'B1',
  key: 'hitLong',
  before: 16,
  after: 18.5,
  low: 17.2,
  high: 19.9,
  observations: 60,
  at: at('2026-11-27', '16:00'),
  revertedAt: null,
  revision: 0,
  ...own,
});

/** One shear, one brake, two orders with three lines; nothing planned or started yet. */
export const aShop = (own: Partial<Shop> = {}): Shop => ({
  settings: someSettings(),
  material: [aMaterial()],
  colour: [aColour({ id: 'bone', name: 'Bone white', hex: '#e8e2d0' }), aColour()],
  sheet: [
    aSheet({ id: 'galv-24-bone', colourId: 'bone' }),
    aSheet(),
    aSheet({ id: 'galv-26-moss', gauge: '26' }),
  ],
  part: [
    aPart(),
    aPart({
      id: 'flat-strip',
      name: 'Flat strip',
      profile: { ...aPart().profile, flangesMm: [150], bends: [] },
    }),
  ],
  calendar: [aCalendar()],
  machine: [aBrake(), aShear()],
  tool: [],
  downtime: [aDowntime()],
  absence: [],
  order: [anOrder(), anOrder({ id: '1043', due: at('2026-12-03'), importance: 2, rush: true })],
  line: [
    aLine(),
    aLine({ number: 2, gauge: '26' }),
    aLine({ orderId: '1043', colourId: 'bone', quantity: 35 }),
  ],
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
  ...own,
});
