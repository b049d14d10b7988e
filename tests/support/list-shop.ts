import type { Shop } from '../../core/shop/state.ts';
import { aColour, aMaterial, aPart, aShop } from './builders.ts';

/** The shop that the lists in tests/fixtures/import are sent to: it works in inches, and calls things in its own way. */
export const listShop = (): Shop =>
  aShop({
    material: [
      aMaterial({
        gauges: [
          { label: '24', thicknessMm: 0.0276 * 25.4, kgPerM2: 5.64 },
          { label: '26', thicknessMm: 0.0217 * 25.4, kgPerM2: 4.42 },
        ],
      }),
    ],
    colour: [
      aColour({ id: 'dark-grey', name: 'Dark grey' }),
      aColour({ id: 'green', name: 'Green' }),
      aColour({ id: 'red', name: 'Red' }),
      aColour({ id: 'white', name: 'White' }),
    ],
    sheet: [],
    part: ['P-101', 'P-102', 'P-103', 'P-104', 'P-105', 'P-106', 'P-118', 'P-119'].map((id) =>
      aPart({ id, name: `Trim ${id}` }),
    ),
    machine: aShop().machine.map((machine) => ({ ...machine, maxLengthMm: 3300 })),
    downtime: [],
    order: [],
    line: [],
  });
