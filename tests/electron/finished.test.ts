import { editService } from '../../electron/service/edit.ts';
import { describe, expect, it } from 'vitest';
import type { Answers } from '../../core/import/answers.ts';
import type { Reading, RowState } from '../../core/import/reading.ts';
import { fileImport } from '../../electron/service/file-import.ts';
import { recordsService } from '../../electron/service/shop.ts';
import { aRecord, aShop, at, someSettings } from '../support/builders.ts';
import { fixedClock, storeWith, livingIn } from './support.ts';

const HEADER =
  'operation,machine,part,material,gauge,colour,length,quantity,good,scrapped,start,end,estimate s';
const SHEAR = '901/1:shear,S1,corner,galv,24,moss,100,20,20,1,2026-11-23 07:00,2026-11-23 07:40,2100';
const BRAKE = '901/1:brake,Brake,Corner,galv,24,Moss green,100,20,,,2026-11-23 08:00,2026-11-23 09:10,';

const rowsOf = ({ rows }: Reading, state: RowState): number[] =>
  rows.filter((one) => one.state === state).map(({ row }) => row);

const issuesOf = ({ rows }: Reading) =>
  rows.flatMap(({ row, cells }) =>
    cells.flatMap(({ field, issue }) => (issue === undefined ? [] : [{ row, field, issue }])),
  );

function start(shop = aShop(), header = HEADER) {
  const store = storeWith(shop);
  const living = livingIn(store);
  const edit = editService(living, fixedClock());
  const service = fileImport(living, fixedClock(), edit);
  const asked = (rows: readonly string[], answers: Answers = {}) => ({
    kind: 'finished' as const,
    fileName: 'old.csv',
    bytes: Buffer.from([header, ...rows].join('\n')),
    answers,
  });
  return {
    edit,
    records: () => recordsService(store).finished(null, 10).records,
    read: (...rows: string[]) => service.read(asked(rows)),
    take: (...rows: string[]) => service.take(asked(rows)),
    takeWith: (answers: Answers, ...rows: string[]) => service.take(asked(rows, answers)),
  };
}

describe('a file of finished operations', () => {
  it('is taken as one entry of the floor’s log, which can be taken back', async () => {
    const { take, records, edit } = start();
    const { factId, ...taken } = await take(SHEAR, BRAKE);
    expect(taken).toMatchObject({ counts: { new: 2 }, stepId: null, left: { counts: { known: 2 } } });
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

  it('adds nothing when it is imported twice', async () => {
    const { take, read } = start();
    await take(SHEAR);
    expect((await read(SHEAR, BRAKE)).counts).toMatchObject({ new: 1, known: 1, wrong: 0 });
    expect(await take(SHEAR)).toMatchObject({ counts: { new: 0 }, factId: null });
  });

  it.each([
    ['operation', SHEAR.replace('901/1:shear', '901'), /“901” is no operation/],
    ['machine', SHEAR.replace('S1', 'B1'), /B1 is no shear, so it cannot have done 901\/1:shear/],
    ['gauge', SHEAR.replace(',24,', ',22,'), /has no gauge “22”/],
    ['quantity', SHEAR.replace(',20,20,', ',0,20,'), /must be at least 1/],
    ['good', SHEAR.replace(',20,20,', ',20,21,'), /More good pieces than the 20/],
    ['end', SHEAR.replace('07:40', '06:40'), /must end after it starts/],
    ['end', SHEAR.replaceAll('2026-11-23', '2027-11-23'), /still to come/],
    ['start', SHEAR.replace('2026-11-23 07:00', ''), /The start is missing/],
    ['operation', SHEAR.replace('901/1', '1042/1'), /Line 1042\/1 is still in the shop/],
  ])('is refused cell by cell: a wrong %s', async (field, row, reason) => {
    const reading = await start().read(row, BRAKE);
    expect(rowsOf(reading, 'new')).toEqual([3]);
    expect(issuesOf(reading)).toContainEqual({
      row: 2,
      field,
      issue: expect.stringMatching(reason) as string,
    });
  });

  it('asks which machine is meant where the shop has none of that name', async () => {
    const reading = await start().read(SHEAR.replace('S1', 'S9'));
    expect(reading.questions).toMatchObject([{ is: 'same', what: 'machine', text: 'S9' }]);
    const same = [{ what: 'machine', text: 'S9', is: 'S1' }] as const;
    const { takeWith, records } = start();
    await takeWith({ same }, SHEAR.replace('S1', 'S9'));
    expect(records()).toMatchObject([{ machineId: 'S1' }]);
  });

  it('that names an operation twice, or one recorded otherwise, keeps the first', async () => {
    const { take, read } = start();
    expect(issuesOf(await read(SHEAR, SHEAR))[0]?.issue).toMatch(/is in the file twice/);
    await take(SHEAR);
    expect(issuesOf(await read(SHEAR.replace('07:40', '07:50')))[0]?.issue).toMatch(/recorded already/);
  });

  it('keeps the rows with wrong cells when the others are taken; mended, they are taken too', async () => {
    const { take, takeWith } = start();
    const wrong = BRAKE.replace('Brake', 'S1');
    const { left } = await take(SHEAR, wrong);
    expect(issuesOf(left)).toMatchObject([{ row: 3, field: 'machine' }]);
    const cells = [{ row: 3, field: 'machine', text: 'B1' }];
    expect((await takeWith({ cells }, SHEAR, wrong)).counts.new).toBe(1);
  });

  it('brings names where the shop asks for them, and says so where it does not', async () => {
    const row = `${SHEAR},Ada; Bo;Ada`;
    const asking = start(aShop({ settings: someSettings({ askWho: true }) }), `${HEADER},who`);
    await asking.take(row);
    expect(asking.records()).toMatchObject([{ who: ['Ada', 'Bo'] }]);
    expect((await asking.read(`${SHEAR},`)).counts).toMatchObject({ known: 1, wrong: 0 });

    const silent = start(aShop(), `${HEADER},who`);
    expect((await silent.read(row)).notes).toContain(
      'Names are not kept: “Ask who ran it” is off in Settings.',
    );
    await silent.take(row);
    expect(silent.records()).toMatchObject([{ who: [] }]);
  });

  it('with a name too long is refused in that cell', async () => {
    const reading = await start(aShop(), `${HEADER},who`).read(`${SHEAR},${'A'.repeat(61)}`);
    expect(issuesOf(reading)).toMatchObject([
      { row: 2, field: 'who', issue: expect.stringMatching(/each up to 60 characters/) as string },
    ]);
  });

  it('without a column that is needed asks which it is', async () => {
    const reading = await start(aShop(), 'operation,machine').read('1,2');
    expect(reading.questions.map(({ id }) => id)).toContain('column:part');
    expect(reading.counts.new).toBe(0);
  });
});
