import { editService } from '../../electron/service/edit.ts';
import { describe, expect, it } from 'vitest';
import type { FileCheck } from '../../core/import/file-check.ts';
import { finishedImport } from '../../electron/service/file-import.ts';
import { recordsService } from '../../electron/service/shop.ts';
import { aRecord, aShop, at, someSettings } from '../support/builders.ts';
import { fixedClock, refusalOf, storeWith, livingIn } from './support.ts';

const HEADER =
  'operation,machine,part,material,gauge,colour,length,quantity,good,scrapped,start,end,estimate s';
const SHEAR = '901/1:shear,S1,corner,galv,24,moss,100,20,20,1,2026-11-23 07:00,2026-11-23 07:40,2100';
const BRAKE = '901/1:brake,Brake,Corner,galv,24,Moss green,100,20,,,2026-11-23 08:00,2026-11-23 09:10,';

const tableOf = ({ header, rows }: FileCheck) => ({ header, rows });

function start(shop = aShop()) {
  const store = storeWith(shop);
  const living = livingIn(store);
  const edit = editService(living, fixedClock());
  const service = finishedImport(living, fixedClock(), edit);
  const bytes = (...rows: string[]) => Buffer.from([HEADER, ...rows].join('\n'));
  return {
    edit,
    records: () => recordsService(store).finished(null, 10).records,
    check: (...rows: string[]) => service.check('old.csv', bytes(...rows)),
    take: (...rows: string[]) => service.take('old.csv', tableOf(service.check('old.csv', bytes(...rows)))),
    service,
  };
}

describe('a file of finished operations', () => {
  it('is taken as one entry of the floor’s log, which can be taken back', () => {
    const { take, records, edit } = start();
    const { factId, ...taken } = take(SHEAR, BRAKE);
    expect(taken).toMatchObject({ operations: 2, left: { rows: [], ready: [] } });
    expect(records()).toEqual([
      aRecord({
        id: '901/1:brake',
        machineId: 'B1',
        start: at('2026-11-23', '08:00'),
        end: at('2026-11-23', '09:10'),
        good: 20,
        scrapped: 0,
        estimatedSeconds: 0,
        revision: 1,
      }),
      aRecord({
        id: '901/1:shear',
        start: at('2026-11-23', '07:00'),
        end: at('2026-11-23', '07:40'),
        good: 20,
        estimatedSeconds: 2100,
        revision: 1,
      }),
    ]);
    expect(edit.undo()).toBeNull();
    expect(edit.takeBack(factId!, '', '')).toBe('Take back: Import 2 finished operations from old.csv');
    expect(records()).toEqual([]);
  });

  it('adds nothing when it is imported twice', () => {
    const { take, check } = start();
    take(SHEAR);
    expect(check(SHEAR, BRAKE)).toMatchObject({ ready: [3], known: [2], issues: [] });
    expect(take(SHEAR)).toMatchObject({ operations: 0 });
  });

  it.each([
    ['operation', SHEAR.replace('901/1:shear', '901'), /“901” is no operation/],
    ['machine', SHEAR.replace('S1', 'B1'), /B1 is a brake, so it cannot have done 901\/1:shear/],
    ['machine', SHEAR.replace('S1', 'S9'), /There is no machine “S9”/],
    ['gauge', SHEAR.replace(',24,', ',22,'), /has no gauge “22”/],
    ['quantity', SHEAR.replace(',20,20,', ',0,20,'), /must be at least 1/],
    ['good', SHEAR.replace(',20,20,', ',20,21,'), /More good pieces than the 20/],
    ['end', SHEAR.replace('07:40', '06:40'), /must end after it starts/],
    ['end', SHEAR.replaceAll('2026-11-23', '2027-11-23'), /still to come/],
    ['start', SHEAR.replace('2026-11-23 07:00', ''), /The start is missing/],
    ['operation', SHEAR.replace('901/1', '1042/1'), /Line 1042\/1 is still in the shop/],
  ])('is refused cell by cell: a wrong %s', (column, row, reason) => {
    const checked = start().check(row, BRAKE);
    expect(checked.ready).toEqual([3]);
    expect(checked.issues).toContainEqual({
      row: 2,
      column,
      value: expect.any(String) as string,
      reason: expect.stringMatching(reason) as string,
    });
  });

  it('that names an operation twice, or one recorded otherwise, keeps the first', () => {
    const { take, check } = start();
    expect(check(SHEAR, SHEAR).issues[0]?.reason).toMatch(/is in the file twice/);
    take(SHEAR);
    expect(check(SHEAR.replace('07:40', '07:50')).issues[0]?.reason).toMatch(/recorded already/);
  });

  it('keeps the rows with wrong cells when the others are taken; mended, they are taken too', () => {
    const { take, service } = start();
    const { left } = take(SHEAR, BRAKE.replace('Brake', 'B9'));
    expect(left.rows.map(({ row }) => row)).toEqual([3]);
    expect(left.issues).toMatchObject([{ row: 3, column: 'machine' }]);
    const fixed = left.rows.map(({ row, cells }) => ({ row, cells: cells.with(1, 'B1') }));
    expect(service.recheck('old.csv', { header: left.header, rows: fixed })).toMatchObject({ ready: [3] });
    expect(service.take('old.csv', { header: left.header, rows: fixed })).toMatchObject({
      operations: 1,
      left: { rows: [] },
    });
  });

  it('brings names where the shop asks for them, and says so where it does not', () => {
    const file = Buffer.from(`${HEADER},who\n${SHEAR},Ada; Bo;Ada`);
    const asking = start(aShop({ settings: someSettings({ askWho: true }) }));
    asking.service.take('old.csv', tableOf(asking.service.check('old.csv', file)));
    expect(asking.records()).toMatchObject([{ who: ['Ada', 'Bo'] }]);
    expect(asking.check(SHEAR)).toMatchObject({ known: [2], issues: [] });

    const silent = start();
    const checked = silent.service.check('old.csv', file);
    expect(checked.notes).toEqual(['Names are not kept: “Ask who ran it” is off in Settings.']);
    silent.service.take('old.csv', tableOf(checked));
    expect(silent.records()).toMatchObject([{ who: [] }]);
  });

  it('with a name too long is refused in that cell', () => {
    const { service } = start();
    const checked = service.check('old.csv', Buffer.from(`${HEADER},who\n${SHEAR},${'A'.repeat(61)}`));
    expect(checked.issues).toMatchObject([
      { row: 2, column: 'who', reason: expect.stringMatching(/no list of names/) as string },
    ]);
  });

  it('without a column that is needed is refused with the list of columns', () => {
    const { service } = start();
    const refusal = refusalOf(() => service.check('old.csv', Buffer.from('operation,machine\n1,2')));
    expect(refusal.message).toMatch(/lacks “part”, .*Name the columns in the first row: operation, machine/);
  });
});
