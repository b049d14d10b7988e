import type { Metal } from './material.ts';

interface MetalDefaults {
  /** Ultimate tensile strength, MPa. */
  readonly tensileMpa: number;
  readonly kFactor: number;
  /** What stands behind them, in words of the shop; the publications stand in the docstring below. */
  readonly basis: string;
}

/**
 * Starting values for a new material record; a mill certificate and a test strip beat them.
 * K-factors: Machinery's Handbook, 26th ed., bend tables for cold-rolled steel (0.446 is its average), stainless
 * (0.438–0.483) and aluminium (0.380–0.407), middle of each range.
 * Strength: 60 ksi for mild steel, the figure machine ratings are given for; 90 ksi for annealed 304 as tonnage charts
 * take it (the ASTM A240 minimum is 75); 22 ksi for 3003-H14 (from memory).
 */
export const METAL_DEFAULTS: Readonly<Record<Metal, MetalDefaults>> = {
  steel: {
    tensileMpa: 414,
    kFactor: 0.446,
    basis: 'strength as machines are rated; K-factor of cold-rolled steel',
  },
  galvanized: {
    tensileMpa: 414,
    kFactor: 0.446,
    basis: 'strength as machines are rated; K-factor of cold-rolled steel',
  },
  stainless: {
    tensileMpa: 620,
    kFactor: 0.46,
    basis: 'annealed 304, as force charts take it; K-factor in the middle of the published range',
  },
  aluminium: {
    tensileMpa: 152,
    kFactor: 0.39,
    basis: '3003-H14, not checked against a standard; K-factor in the middle of the published range',
  },
};
