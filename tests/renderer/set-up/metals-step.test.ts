// @vitest-environment jsdom
import { describe, expect, it } from 'vitest';
import { rowsOf } from '../../../renderer/screens/set-up/metals-step.tsx';
import { aColour, aMaterial, aShop, someSettings } from '../../support/builders.ts';
import { after } from '../../support/edits.ts';

const empty = aShop({
  material: [],
  colour: [],
  sheet: [],
  part: [],
  order: [],
  line: [],
  queue: [],
  pin: [],
});
const nothing = { gauges: [], colours: [], more: '' };
const said = (rows: ReturnType<typeof rowsOf>) => rows.map(({ kind, row }) => `${kind} ${row.id}`);

describe('metals and colours that are ticked', () => {
  it('become one metal with its gauges, and a colour each', () => {
    const rows = rowsOf(empty, {
      ...nothing,
      gauges: ['galvanized 24', 'galvanized 26'],
      colours: ['White'],
    });
    expect(said(rows)).toEqual(['material galv', 'colour white']);
    const shop = after(empty, { do: 'rows.save', rows, label: 'Add metals and colours' });
    expect(shop.material[0]?.gauges.map(({ label }) => label)).toEqual(['24', '26']);
  });

  it('are millimetres in a metric shop', () => {
    const metric = { ...empty, settings: someSettings({ units: 'mm' }) };
    const rows = rowsOf(metric, { ...nothing, gauges: ['aluminium 0.8', 'galvanized 24'] });
    expect(said(rows)).toEqual(['material alum']);
    expect(rows[0]?.row).toMatchObject({ gauges: [{ label: '0.8', thicknessMm: 0.8, kgPerM2: 2.16 }] });
  });

  it('are added to a metal that is kept, whose own figures stay', () => {
    const shop = { ...empty, material: [aMaterial({ revision: 3 })] };
    const [row] = rowsOf(shop, { ...nothing, gauges: ['galvanized 24', 'galvanized 28'] });
    expect(row?.row).toMatchObject({ id: 'galv', revision: 3, tensileMpa: 330 });
    expect(row?.kind === 'material' && row.row.gauges.map(({ label }) => label)).toEqual(['24', '26', '28']);
  });

  it('typed with commas become colours, each once, those kept left out', () => {
    const shop = { ...empty, colour: [aColour()] };
    const rows = rowsOf(shop, {
      ...nothing,
      colours: ['White'],
      more: ' moss green, Schiefer; Café ,white,,',
    });
    expect(said(rows)).toEqual(['colour white', 'colour schiefer', 'colour cafe']);
    expect(rows[1]?.row).toMatchObject({ name: 'Schiefer', hex: '#808080' });
  });
});
