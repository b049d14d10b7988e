import type { Shop } from '../../core/shop/state.ts';
import { aLearned, aPin, aQueue, aRecord, aShop, at } from './builders.ts';
import { aTool } from './tool-builders.ts';
import { aCutCount, aCutList, aDelivery, aKeptList, aMovement } from './stock-builders.ts';

/** A shop that uses each kind of row at least once. */
export const anEverythingShop = (): Shop =>
  aShop({
    queue: [
      aQueue({ id: 'B1', operations: ['1042/1:brake'] }),
      aQueue({ operations: ['1042/1:shear', '1043/1:shear'] }),
    ],
    published: [{ id: 'S1', operations: ['1042/1:shear'], revision: 0 }],
    pin: [aPin({ id: '1043/1:shear' })],
    changeover: [{ id: 'B1', operation: '1042/1:brake', since: at('2026-11-30', '07:10'), revision: 0 }],
    record: [
      aRecord({
        id: '1042/1:shear',
        end: null,
        good: 0,
        scrapped: 0,
        changeoverSeconds: 540,
        pauses: [{ from: at('2026-11-30', '07:20'), to: null, reason: 'Waiting for sheets' }],
      }),
    ],
    learned: [aLearned()],
    absence: [
      { id: 'flu', people: 1, from: at('2026-12-02'), to: at('2026-12-03'), reason: 'Flu', revision: 0 },
    ],
    tool: [aTool()],
    movement: [aMovement()],
    cutList: [aCutList()],
    cutCount: [aCutCount()],
    keptList: [aKeptList()],
    delivery: [aDelivery()],
    otherName: [{ id: 'colour:ral 7016', kind: 'colour', text: 'RAL 7016', oursId: 'moss', revision: 0 }],
    fileLayout: [
      {
        id: 'orders:job no|qty',
        kind: 'orders',
        layout: {
          columns: { order: 'Job No', quantity: 'Qty' },
          units: { length: 'mm' },
          dates: { due: 'dmy' },
          decimals: {},
          toNote: ['Site'],
        },
        revision: 0,
      },
    ],
  });
