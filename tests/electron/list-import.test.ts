import { describe, expect, it } from 'vitest';
import type { ImportKindName } from '../../core/import/kinds.ts';
import type { Answers } from '../../core/import/answers.ts';
import { editService } from '../../electron/service/edit.ts';
import { fileImport } from '../../electron/service/file-import.ts';
import { aShop } from '../support/builders.ts';
import { fixedClock, livingIn, shopIn, storeWith } from './support.ts';

function start() {
  const shop = aShop();
  const store = storeWith(shop);
  const living = livingIn(store);
  const edit = editService(living, fixedClock());
  const service = fileImport(living, fixedClock(), edit);
  return {
    before: shopIn(store),
    edit,
    shop: () => shopIn(store),
    take: (kind: ImportKindName, lines: readonly string[], answers: Answers = {}) =>
      service.take({ kind, fileName: `${kind}.csv`, bytes: Buffer.from(lines.join('\n')), answers }),
  };
}

describe('files of a shop’s lists', () => {
  it('are one step of the history, and the same file again is known', async () => {
    const { take, shop, edit, before } = start();
    const file = ['code,name,profile,length', 'K 1/20,Angle,in: 4; 90 up; 2,10 ft', 'corner,Angle of 100,,'];
    const taken = await take('parts', file);
    expect(taken).toMatchObject({
      label: 'Import 1 part from parts.csv, change 1',
      counts: { new: 1, changed: 1 },
      factId: null,
      left: { counts: { known: 2 } },
    });
    expect((await take('parts', file)).stepId).toBeNull();
    expect(edit.undo()).toBe(taken.label);
    expect(shop().part.map(({ id, name }) => ({ id, name }))).toEqual(
      before.part.map(({ id, name }) => ({ id, name })),
    );
    expect(shop().otherName).toEqual([]);
  });

  it('let files of orders name a part as the file of parts did', async () => {
    const { take, shop } = start();
    await take('parts', ['code,profile,length', 'K 1/20,in: 4; 90 up; 2,10 ft']);
    await take('orders', [
      'order,customer,part,quantity,gauge,colour,due',
      '2001,Invented Sheds,K 1/20,40,24,moss,2026-12-10',
    ]);
    const made = shop().part.find(({ name }) => name === 'K 1/20');
    expect(shop().line.find(({ orderId }) => orderId === '2001')?.partId).toBe(made?.id);
  });

  it('of counted stock are one entry of the log, which undo leaves and a later one takes back', async () => {
    const { take, shop, edit } = start();
    const onHand = () => shop().sheet.find(({ id }) => id === 'galv-24-bone')?.onHand;
    const taken = await take('stock', ['code,count', 'galv-24-bone,7', 'galv-24-moss,40']);
    expect(taken).toMatchObject({
      label: 'Set 1 count of stock by stock.csv',
      counts: { new: 0, changed: 1 },
      stepId: null,
      left: { counts: { known: 2 } },
    });
    expect(onHand()).toBe(7);
    expect(edit.undo()).toBeNull();
    edit.takeBack(taken.factId!, '', 'counted the wrong rack');
    expect(onHand()).toBe(40);
  });
});
