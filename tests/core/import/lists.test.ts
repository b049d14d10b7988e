import { describe, expect, it } from 'vitest';
import { importKinds } from '../../../core/import/kinds.ts';
import { publishedGauges } from '../../../core/material/gauges.ts';
import { aShop, someSettings } from '../../support/builders.ts';
import { readList, taken } from './list-table.ts';

const shop = aShop();
const german = aShop({ settings: someSettings({ units: 'mm', decimals: 'comma' }) });

it('a word stands for one field of a kind only', () => {
  for (const kind of Object.values(importKinds)) {
    const words = kind.fields(shop).fields.flatMap((field) => [...new Set([field.name, ...field.words])]);
    const twice = words.filter((word, i) => words.indexOf(word) !== i);
    expect({ kind: kind.fields(shop).kind, twice }).toEqual({ kind: kind.fields(shop).kind, twice: [] });
  }
});

describe('colours from a file', () => {
  it('are added, changed or known, and nothing else of the shop goes', () => {
    const read = readList('colours', shop, [
      'Farbcode | Farbton | Hexcode',
      'moss | Moosgrün | 4A5D43',
      'bone | Bone white |',
      '7016 | Anthrazit | #383e42',
    ]);
    const before = shop.colour.find(({ id }) => id === 'bone')!;
    expect([read.of('changed'), read.of('known'), read.of('new')]).toEqual([
      [2],
      before.name === 'Bone white' ? [3] : [],
      [4],
    ]);
    expect(read.cell(2, 'name')?.was).toBe('Moss green');
    const { label, after, undone } = taken(shop, read);
    expect(label).toBe('Import 1 colour from colours.csv, change 1');
    expect(after.colour.find(({ id }) => id === '7016')).toMatchObject({ name: 'Anthrazit', hex: '#383e42' });
    expect(undone.colour).toEqual(shop.colour);
  });

  it('keep what a file calls them where that cannot be a code, so that orders with it are understood', () => {
    const read = readList('colours', shop, ['RAL | Name', 'RAL 7016 | Anthracite']);
    const { after } = taken(shop, read);
    expect(after.colour.find(({ name }) => name === 'Anthracite')?.id).toBe('ral-7016');
    expect(after.otherName).toMatchObject([{ kind: 'colour', text: 'RAL 7016', oursId: 'ral-7016' }]);
    expect(readList('colours', after, ['RAL | Name', 'RAL 7016 | Anthracite']).of('known')).toEqual([2]);
  });

  it('are refused twice, and with a swatch that is none', () => {
    const read = readList('colours', shop, [
      'Name | Swatch',
      'Slate | grey',
      'Ash | #aaaaaa',
      'ash | #bbbbbb',
    ]);
    expect(read.of('wrong')).toEqual([2, 4]);
    expect(read.why(2)).toContain('“grey” is no swatch');
    expect(read.why(4)).toContain('Row 3 is colour ash already');
  });
});

describe('metals from a file', () => {
  it('have a row for each gauge; thickness and weight of a published gauge are the table’s', () => {
    const read = readList('materials', shop, [
      'Material | Type | Ga | Thickness (in)',
      'Stainless 304 | stainless steel | 24 ga |',
      'Stainless 304 | stainless steel | #26 | 0.018',
    ]);
    expect(read.of('new')).toEqual([2, 3]);
    expect(read.row(2).words).toContain('as usual for stainless');
    const { label, after, undone } = taken(shop, read);
    expect(label).toBe('Import 1 metal from materials.csv');
    const made = after.material.find(({ name }) => name === 'Stainless 304')!;
    const table = publishedGauges('stainless').find((gauge) => gauge.label === '24')!;
    expect(made).toMatchObject({ id: 'stainless-304', metal: 'stainless', tensileMpa: 620 });
    expect(made.gauges.map((gauge) => gauge.label)).toEqual(['24', '26']);
    expect(made.gauges[0]!.thicknessMm).toBeCloseTo(table.thicknessMm, 3);
    expect(made.gauges[0]!.kgPerM2).toBeCloseTo(table.kgPerM2, 3);
    expect(undone.material).toEqual(shop.material);
  });

  it('know their family by their name; bare thicknesses are gauges of a metric shop', () => {
    const read = readList('materials', german, [
      'Werkstoff | Dicke (mm)',
      'Stahl verzinkt | 0,7',
      'Edelstahl | 0,80',
    ]);
    const { after } = taken(german, read);
    expect(after.material.find(({ name }) => name === 'Stahl verzinkt')).toMatchObject({
      metal: 'galvanized',
      gauges: [{ label: '0.7', thicknessMm: 0.7, kgPerM2: 5.495 }],
    });
    expect(after.material.find(({ name }) => name === 'Edelstahl')).toMatchObject({
      metal: 'stainless',
      gauges: [{ label: '0.8', thicknessMm: 0.8 }],
    });
  });

  it('of the shop get new gauges and changed thicknesses, and keep the others', () => {
    const read = readList('materials', german, [
      'Werkstoff | Lehre | Dicke (mm)',
      'galv | 24 | 0,75',
      'galv | 20 | 1',
    ]);
    expect([read.of('changed'), read.of('new')]).toEqual([[2], [3]]);
    expect(read.cell(2, 'thickness')).toMatchObject({ read: '0,75 mm', was: '0,70 mm' });
    const galv = taken(german, read).after.material.find(({ id }) => id === 'galv')!;
    expect(galv.gauges.map(({ label, thicknessMm }) => [label, thicknessMm])).toEqual([
      ['20', 1],
      ['24', 0.75],
      ['26', 0.551],
    ]);
    expect(galv.tensileMpa).toBe(330);
  });

  it('known by their code get the file’s name; a thickness that a gauge has is that gauge', () => {
    const read = readList('materials', shop, [
      'Code | Metal | Thickness (in)',
      'galv | Zinc-coated sheet | 0.0276',
    ]);
    expect(read.of('changed')).toEqual([2]);
    expect(read.cell(2, 'metal')?.was).toBe('Galvanized');
    const galv = taken(shop, read).after.material[0]!;
    expect(galv).toMatchObject({ id: 'galv', name: 'Zinc-coated sheet' });
    expect(galv.gauges).toEqual(shop.material[0]!.gauges);
  });

  it('have one family', () => {
    const read = readList('materials', shop, ['Metal | Family | Gauge', 'galv | stainless | 20']);
    expect(read.why(2)).toContain('Galvanized is galvanized, not stainless');
  });

  it('are not guessed: an unknown family, a gauge of no table, nothing at all', () => {
    const read = readList('materials', shop, [
      'Metal | Gauge | Thickness (in)',
      'Oddium | 24 |',
      'galv | 99 |',
      'galv | |',
      'Copper | | 0.02',
    ]);
    expect(read.of('wrong')).toEqual([2, 3, 4, 5]);
    expect(read.why(2)).toContain('Which family “Oddium” belongs to is not said');
    expect(read.why(3)).toContain('stands in no published table');
    expect(read.why(4)).toContain('neither a gauge nor a thickness');
  });
});

describe('machines from a file', () => {
  it('take usual figures for what is left out, and say so', () => {
    const read = readList('machines', german, [
      'Nr. | Maschine | Art | Arbeitslänge (mm) | Presskraft t | V',
      'AP2 | Abkantpresse 2 | Abkantpresse | 4000 | 130 | 10',
      'TS2 | Tafelschere 2 | Tafelschere | 3100 | |',
    ]);
    expect(read.of('new')).toEqual([2, 3]);
    expect(read.row(2).words).toMatch(/^Usual thickness: /);
    expect(read.row(3).words).toContain('thickness, back gauge, narrowest strip');
    expect(read.reading.notes.join(' ')).toContain('metric tonnes');
    const { label, after } = taken(german, read);
    expect(label).toBe('Import 2 machines from machines.csv');
    expect(after.machine.find(({ id }) => id === 'AP2')).toMatchObject({
      stage: 'brake',
      maxLengthMm: 4000,
      tonnes: 130,
      dieOpeningMm: 10,
      calendarId: 'day',
    });
  });

  it('of the shop are changed by code or name, with what stood there', () => {
    const read = readList('machines', shop, ['Code | Name | Tonnes', 'B1 | Brake | 80']);
    expect(read.of('changed')).toEqual([2]);
    expect(read.cell(2, 'tonnes')).toMatchObject({ read: '80', was: '60' });
    expect(taken(shop, read).after.machine.find(({ id }) => id === 'B1')).toMatchObject({
      tonnes: 80,
      dieOpeningMm: 12,
    });
  });

  it('may be benches and outside shops, which need no figures of a plate and take none', () => {
    const read = readList('machines', shop, [
      'Code | Name | Type | Length | Thickness',
      'P1 | Packing | packing bench | 3 m |',
      'N1 | Notcher | notching | |',
      'O1 | Coater | outside work | |',
      'E1 | Soldering | end work | | 1.2 mm',
    ]);
    expect(read.of('new')).toEqual([2, 3, 4]);
    expect(read.why(5)).toContain('An end-work bench has no thickness');
    expect(read.row(2).words).toBe('');
    const { after } = taken(shop, read);
    const machine = (id: string) => after.machine.find((one) => one.id === id);
    expect(machine('P1')).toMatchObject({ stage: 'pack', maxLengthMm: 3000, maxThicknessMm: null });
    expect(machine('N1')).toMatchObject({ stage: 'notch', maxLengthMm: null, tonnes: null });
    expect(machine('O1')).toMatchObject({ stage: 'outside', changeover: { attributes: {} } });
  });

  it('are not guessed: neither what they are nor when they work', () => {
    const read = readList('machines', shop, [
      'Name | Stage | Tonnes | Hours',
      'Third | | |',
      'Fourth | lathe | |',
      'Fifth | brake | | Night',
      'Sixth | shear | 90 |',
    ]);
    expect(read.of('wrong')).toEqual([2, 3, 4, 5]);
    expect(read.why(2)).toContain('Is it a shear or a press brake?');
    expect(read.why(3)).toContain('“lathe” is no stage');
    expect(read.why(4)).toContain('Write one of the shop’s calendars: “Day shift”');
    expect(read.why(5)).toContain('A shear has no tonnes');
  });
});
