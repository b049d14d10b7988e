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

/** The rows of sheets.json: both sizes in every gauge and colour, with invented counts on hand. */
export const sheetRows = (
  materials: readonly Bought[],
  colours: readonly { readonly id: string }[],
  rng: Rng,
) =>
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
