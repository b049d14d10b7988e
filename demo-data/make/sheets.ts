import type { Rng } from './rng.ts';

interface Bought {
  readonly id: string;
  readonly gauges: readonly { readonly label: string; readonly kgPerM2: number }[];
}

/** Flat sheet as it is commonly bought (common practice, no source): 48 × 120 in, and 48 × 96 in. */
const sizes = [
  { name: '48x120', widthMm: 1219.2, lengthMm: 3048 },
  { name: '48x96', widthMm: 1219.2, lengthMm: 2438.4 },
] as const;

/** Invented prices: cents per kilogram of prefinished sheet. */
const centsPerKg: Readonly<Record<string, number>> = { galv: 420, alum: 1150 };

/** The rows of sheets.json: both sizes in every gauge and colour, a coil, and remnants of last week; counts are invented. */
export const sheetRows = (
  materials: readonly Bought[],
  colours: readonly { readonly id: string }[],
  rng: Rng,
) => [...bought(materials, colours, rng), coil, ...remnants];

const bought = (materials: readonly Bought[], colours: readonly { readonly id: string }[], rng: Rng) =>
  materials.flatMap((material) =>
    material.gauges.flatMap((gauge) =>
      colours.flatMap((colour) =>
        sizes.map((size) => {
          const kg = (size.widthMm / 1000) * (size.lengthMm / 1000) * gauge.kgPerM2;
          return {
            id: `${material.id}-${gauge.label.replace('.', '')}-${colour.id}-${size.name}`,
            materialId: material.id,
            gauge: gauge.label,
            colourId: colour.id,
            form: 'sheet' as const,
            widthMm: size.widthMm,
            lengthMm: size.lengthMm,
            trimMm: 0,
            costCents: 25 * Math.round((kg * (centsPerKg[material.id] ?? 500)) / 25),
            onHand: size.name === '48x120' ? rng.whole(15, 140) : rng.whole(0, 40),
          };
        }),
      ),
    ),
  );

/** A coil is counted and priced by the metre: 4 ft wide, prefinished galvanized, 24 gauge. */
const coil = {
  id: 'galv-24-wheat-coil',
  materialId: 'galv',
  gauge: '24',
  colourId: 'wheat',
  form: 'coil' as const,
  widthMm: 1219.2,
  lengthMm: 1000,
  trimMm: 6.4,
  costCents: 2950,
  onHand: 60,
};

const remnant = (gauge: string, colourId: string, widthMm: number, lengthMm: number, costCents: number) => ({
  id: `galv-${gauge}-${colourId}-r${Math.round(widthMm)}x${Math.round(lengthMm)}`,
  materialId: 'galv',
  gauge,
  colourId,
  form: 'remnant' as const,
  widthMm,
  lengthMm,
  trimMm: 0,
  costCents,
  onHand: 1,
});

/** 20, 14 and 12 in wide, 10 and 8 ft long. */
const remnants = [
  remnant('24', 'charcoal', 508, 3048, 900),
  remnant('24', 'slate', 355.6, 3048, 625),
  remnant('26', 'moss', 304.8, 2438.4, 350),
];
