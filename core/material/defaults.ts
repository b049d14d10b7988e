import type { Metal } from './material.ts';

export interface MetalDefaults {
  /** Ultimate tensile strength, MPa. */
  readonly tensileMpa: number;
  readonly kFactor: number;
  /** g/cm³, for stock that is given by thickness alone. */
  readonly density: number;
  readonly source: string;
}

/**
 * Starting values for a new material record; a mill certificate and a test strip beat them.
 * K-factors: Machinery's Handbook, 26th ed., bend tables for cold-rolled steel (0.446 is its average), stainless
 * (0.438–0.483) and aluminium (0.380–0.407), middle of each range.
 * Strength: 60 ksi for mild steel, the figure machine ratings are given for; 90 ksi for annealed 304 as tonnage charts
 * take it (the ASTM A240 minimum is 75); 22 ksi for 3003-H14 (from memory). Densities: handbook values (from memory).
 */
export const METAL_DEFAULTS: Readonly<Record<Metal, MetalDefaults>> = {
  steel: {
    tensileMpa: 414,
    kFactor: 0.446,
    density: 7.85,
    source: "60 ksi, as machines are rated; K: Machinery's Handbook, cold-rolled steel",
  },
  galvanized: {
    tensileMpa: 414,
    kFactor: 0.446,
    density: 7.85,
    source: "60 ksi, as machines are rated; K: Machinery's Handbook, cold-rolled steel",
  },
  stainless: {
    tensileMpa: 620,
    kFactor: 0.46,
    density: 8,
    source: "annealed 304, 90 ksi, as tonnage charts take it; K: Machinery's Handbook, stainless",
  },
  aluminium: {
    tensileMpa: 152,
    kFactor: 0.39,
    density: 2.73,
    source: "3003-H14, 22 ksi (from memory); K: Machinery's Handbook, aluminium",
  },
};

/** Weight in kg/m² of stock given by its thickness alone; 1 mm of 1 g/cm³ is 1 kg/m². */
export const weightFromThickness = (metal: Metal, thicknessMm: number): number =>
  METAL_DEFAULTS[metal].density * thicknessMm;
