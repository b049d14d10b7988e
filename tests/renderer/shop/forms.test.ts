import { describe, expect, it } from 'vitest';
import { calendar as calendarSchema } from '../../../core/time/calendar.ts';
import { machine as machineSchema } from '../../../core/shop/machine.ts';
import { colour as colourSchema } from '../../../core/material/material.ts';
import { part as partSchema } from '../../../core/part/part.ts';
import { fieldErrors, refusalErrors } from '../../../renderer/form/field-errors.ts';
import { keptFigure } from '../../../renderer/form/kept-figure.ts';
import { aProfile } from '../../core/part/profiles.ts';
import {
  nextDowntimeId,
  freshMachine,
  withChangeover,
  withStandard,
  withState,
} from '../../../renderer/screens/shop/machines/machine-edit.ts';
import { fromTable, missingGauges } from '../../../renderer/screens/shop/materials/gauge-rows.ts';
import { aBrake, aCalendar, aColour, aDowntime, aPart, aShop } from '../../support/builders.ts';

describe('what a form says at its fields', () => {
  it('is nothing when the entries can be saved', () => {
    expect(fieldErrors(colourSchema, aColour())).toEqual({});
  });

  it('is a whole sentence, in the schema’s own words where it has some', () => {
    expect(fieldErrors(colourSchema, aColour({ name: ' ', hex: 'green' }))).toEqual({
      name: 'Must not be empty.',
      hex: 'A colour like #2f5d3a.',
    });
  });

  it('is said in plain words where the schema has none of its own', () => {
    const errors = fieldErrors(
      machineSchema,
      aBrake({ maxLengthMm: NaN, crew: 1.5, maxThicknessMm: 0, tonnes: 6000 }),
    );
    expect(errors).toEqual({
      maxLengthMm: 'Needs a number.',
      crew: 'Must be a whole number.',
      maxThicknessMm: 'Must be above 0.',
      tonnes: 'Must be at most 5000.',
    });
  });

  it('gives no limit in a unit that the shop does not read', () => {
    const errors = fieldErrors(
      machineSchema,
      aBrake({ maxThicknessMm: 60, dieOpeningMm: 600, maxLengthMm: 60_000 }),
    );
    expect(errors).toEqual({
      maxThicknessMm: 'Is too large.',
      dieOpeningMm: 'Is too large.',
      maxLengthMm: 'Is too large.',
    });
    expect(fieldErrors(partSchema, { ...aPart(), profile: aProfile({ flangesMm: [] }) })).toMatchObject({
      'profile.flangesMm': 'Needs at least one flange.',
    });
  });

  it('names the field inside a list', () => {
    const [shift] = aCalendar().shifts;
    const backwards = aCalendar({ shifts: [{ ...shift!, start: '16:00' }] });
    expect(Object.keys(fieldErrors(calendarSchema, backwards))).toEqual(['shifts.0.end']);
  });

  it('gathers refusals that no field shows over the form', () => {
    const issues = [
      { subject: 'a', field: 'x', message: 'One.', advice: 'Do this.' },
      { subject: 'a', field: 'y', message: 'Two.', advice: '' },
    ];
    expect(refusalErrors(issues, () => '')).toEqual({ '': 'One. Do this. Two.' });
  });
});

it('a figure shown in another unit stays as it is kept until it is typed anew', () => {
  const perPound = 0.45359237;
  // 18 kg show as 39.68 lb; typed again they are still 18 kg.
  expect(keptFigure(18, 39.68, perPound, 2)).toBe(18);
  expect(keptFigure(18, 40, perPound, 2)).toBeCloseTo(18.1437, 4);
  expect(keptFigure(18, 18, 1, 2)).toBe(18);
});

describe('the gauges of a material', () => {
  it('can be taken from the published table, without those that are there', () => {
    const missing = missingGauges('galvanized', [{ label: '24', thicknessMm: 0.6, kgPerM2: 5 }]);
    expect(missing.map(({ label }) => label)).not.toContain('24');
    expect(missing.map(({ label }) => label)).toContain('26');
  });

  it('get the table’s figures: 24 ga galvanized is 0.0276 in and 1.156 lb/ft² in the published tables', () => {
    const gauge = fromTable('galvanized', { label: '24', thicknessMm: NaN, kgPerM2: NaN });
    expect(gauge.thicknessMm / 25.4).toBeCloseTo(0.0276, 4);
    expect(gauge.kgPerM2 / 4.8824).toBeCloseTo(1.156, 3);
  });

  it('stay as typed when no table has them', () => {
    const own = { label: '.032', thicknessMm: 0.81, kgPerM2: 2.2 };
    expect(fromTable('aluminium', own)).toBe(own);
  });
});

describe('a machine on its form', () => {
  it('takes a standard of its own and goes back to the default', () => {
    const own = withStandard(aBrake({ standards: {} }), 'flip', 9);
    expect(own).toEqual({ flip: 9 });
    expect(withStandard(aBrake({ standards: own }), 'flip', null)).toEqual({});
  });

  it('costs nothing for a change whose field is empty', () => {
    const brake = aBrake();
    expect(withChangeover(brake, 'gauge', null).attributes).toEqual({ profile: 900 });
    expect(withChangeover(brake, 'gauge', 60).attributes).toEqual({ profile: 900, gauge: 60 });
    expect(brake.changeover.attributes).toEqual({ profile: 900, gauge: 300 });
  });

  it('has no state when nothing of it is known', () => {
    const known = withState(aBrake({ state: null }), 'gauge', '26');
    expect(known).toEqual({ gauge: '26' });
    expect(withState(aBrake({ state: known }), 'gauge', null)).toBeNull();
  });

  it('asks a new shear for its own limits and a new brake for its own', () => {
    const needs = (stage: 'shear' | 'brake') =>
      Object.keys(
        fieldErrors(machineSchema, { ...freshMachine(aShop(), stage), id: 'X', name: 'New' }),
      ).sort();
    expect(needs('shear')).toEqual([
      'backGaugeMm.max',
      'backGaugeMm.min',
      'maxLengthMm',
      'maxThicknessMm',
      'minStripMm',
    ]);
    expect(needs('brake')).toEqual(['dieOpeningMm', 'maxLengthMm', 'maxThicknessMm', 'tonnes']);
  });

  it('numbers its downtimes without taking a code twice', () => {
    const shop = aShop({ downtime: [aDowntime({ id: 'B1-1' }), aDowntime({ id: 'B1-3' })] });
    expect(nextDowntimeId(shop, 'B1')).toBe('B1-2');
  });
});
