import { describe, expect, it } from 'vitest';
import { fitOf, NEAR, readHeading } from '../../../core/import/heading.ts';
import { orderFields } from '../../../core/import/order-fields.ts';
import { aShop } from '../../support/builders.ts';

const { fields } = orderFields(aShop());

/** The fields that a heading names; with a question mark those that it is only like. */
const fieldsOf = (heading: string): string[] =>
  fields
    .flatMap((field) => {
      const fit = fitOf(readHeading(heading), field);
      return fit === null ? [] : [{ fit, name: fit < NEAR ? field.name : `${field.name}?` }];
    })
    .sort((a, b) => a.fit - b.fit)
    .map(({ name }) => name);

describe('a heading names its field', () => {
  it.each([
    ['W/O', 'order'],
    ['WO #', 'order'],
    ['Job No.', 'order'],
    ['Cust Name', 'customer'],
    ['Qty Ord', 'quantity'],
    ['Item', 'part'],
    ['Ship By', 'due'],
    ['Due Dt', 'due'],
    ['Required', 'due'],
    ['Liefern bis', 'due'],
    ['À livrer le', 'due'],
    ['Fällig am', 'due'],
  ])('%s: %s', (heading, field) => expect(fieldsOf(heading)[0]).toBe(field));
});

describe('a unit in a heading is the column’s', () => {
  it.each([
    ['Länge (mm)', 'mm'],
    ['Len in inches', 'in'],
    ['Len in in', 'in'],
    ['Long. en MM', 'mm'],
    ['Longueur en m', 'm'],
    ['Length, feet', 'ft'],
  ])('%s: %s', (heading, unit) => {
    expect(readHeading(heading).unit).toBe(unit);
    expect(fieldsOf(heading)).toEqual(['length']);
  });
});

it('a heading of another thing is none of ours, whatever words of ours it has', () => {
  for (const heading of ['Weight (lb)', 'Gewicht (kg)', 'Unit price', 'Line total', 'Cust. no.', 'Montant'])
    expect(fieldsOf(heading)).toEqual([]);
});
