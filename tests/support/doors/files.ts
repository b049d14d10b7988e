import { tableNames } from '../../../electron/db/whole.ts';
import { aRecord, NOW } from '../builders.ts';
import { anEverythingShop } from '../everything-shop.ts';

/** Whole files of each kind for the small shop, to be broken. */

export const ordersFile = [
  'order,line,customer,part,quantity,extra pieces,material,gauge,colour,length,not before,due,importance,rush,note',
  '2001,1,Gütersloh Sheds,corner,40,2,galv,24,moss,96,2026-12-01 07:00,2026-12-10 15:00,2,yes,at the gate',
  '2001,2,,flat-strip,12,,galv,26,bone,9 1/2 in,,,,,',
  '2001,,,corner,"1,200",,galv,24,moss,3050 mm,,,,,"say ""hello""',
  'twice"',
  '2002,,Invented Barns,Corner,8,,Galvanized,#24,Bone white,10 ft,,10.12.2026,,,=1+1',
  '1042,1,Invented Roofing,corner,20,,galv,24,moss,100,,2026-12-04 17:00,,,',
  '1042,7,,flat-strip,5,,galv,24 ga,moss,,,,,,',
].join('\n');

export const finishedFile = [
  'operation,machine,part,material,gauge,colour,length,quantity,start,end,good,scrapped,estimate s,changeover s,who',
  '901/1:shear,S1,corner,galv,24,moss,100,20,2026-11-23 07:00,2026-11-23 08:10,20,0,3300,540,',
  '901/1:brake,B1,corner,galv,24,moss,100,20,2026-11-23 09:00,2026-11-23 10:40,19,1,5200,,Robin;Kim',
  '902/4:brake,Brake,Corner,galv,#24,moss,8 ft,"1,200",2026-11-24 07:00,2026-11-24 15:00,1200,,,,',
].join('\n');

/** What may be said of such files. */
export const fileAnswers = {
  header: 1,
  columns: { quantity: 'quantity', note: '' },
  units: { length: 'mm' },
  dates: { due: 'dmy' },
  decimals: { length: 'comma' },
  toNote: ['customer'],
  every: { colour: 'moss' },
  same: [{ what: 'colour', text: 'Bone white', is: 'bone' }],
  cells: [{ row: 3, field: 'quantity', text: '12' }],
  leaveOut: [4],
  accept: [2],
};

const shop = anEverythingShop();
const change = { kind: 'pin', id: '1043/1:shear', before: null, after: { id: '1043/1:shear', revision: 0 } };
const rows: Readonly<Record<string, readonly unknown[]>> = {
  ...shop,
  settings: [shop.settings],
  record: [...shop.record, aRecord({ id: '901/1:brake', machineId: 'B1' })],
  step: [{ id: 1, label: 'Pin 1043/1:shear', at: NOW, changes: [change], undone: false, by: 'desk' }],
};

export const exportFile = JSON.stringify({
  format: 'foldweek-export/1',
  version: '0.1.0',
  at: NOW,
  tables: Object.fromEntries(tableNames.map((table) => [table, rows[table] ?? []])),
});

export const shopProblemFile = JSON.stringify({
  format: 'shop-problem/1',
  name: 'small',
  machines: [
    {
      id: 'S1',
      stage: 'shear',
      initial: { gauge: '24', colour: 'red' },
      changeover: {
        combine: 'sum',
        attributes: { gauge: 600, colour: 240 },
        exceptions: [{ attribute: 'gauge', from: '24', to: '26', seconds: 60 }],
        pairs: {
          attribute: 'family',
          values: ['a', 'b'],
          seconds: [
            [0, 30],
            [40, 0],
          ],
          initial: [5, 6],
        },
      },
    },
    { id: 'B1', stage: 'brake', initial: null, changeover: { combine: 'max', attributes: { profile: 900 } } },
    { id: 'B2', stage: 'brake', changeover: null },
  ],
  jobs: ['J1', 'J2', 'J3'].map((id, k) => ({
    id,
    release: 600 * k,
    due: k === 2 ? null : 7200 - 900 * k,
    weight: 1 + k,
    operations: [
      {
        stage: 'shear',
        seconds: 540,
        attributes: { gauge: k === 1 ? '26' : '24', colour: 'red', family: 'a' },
      },
      { stage: 'brake', seconds: 1800, machines: ['B1', 'B2'], attributes: { profile: `cap ${k}` } },
    ],
  })),
  objective: { weightedTardiness: 1, changeover: 0.1, makespan: 0.01, flowTime: 0 },
  bestKnown: null,
  bestKnownIsOptimal: false,
});

export const cutProblemFile = JSON.stringify({
  format: 'cut-problem/1',
  name: 'strips',
  stock: [
    { id: 'long', length: 3050, available: null, cost: 2 },
    { id: 'short', length: 2440, available: 3, cost: 1.5 },
  ],
  items: [
    { id: 'a', length: 950, quantity: 12 },
    { id: 'b', length: 610, quantity: 7 },
    { id: 'c', length: 333.3, quantity: 20 },
  ],
  trim: 5,
  bestKnown: 9,
  bestKnownIsOptimal: false,
});
