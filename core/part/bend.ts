/**
 * Bend arithmetic in any one unit of length. `angle` is the angle turned through in degrees (a square corner is 90),
 * never the included angle; `radius` is the inside radius; `kFactor` places the neutral line, as a share of thickness.
 */
export interface BendShape {
  readonly angle: number;
  readonly radius: number;
  readonly thickness: number;
  readonly kFactor: number;
}

export const radians = (angle: number): number => (angle * Math.PI) / 180;
export const degrees = (turn: number): number => (turn * 180) / Math.PI;

/** How a flange is measured where it meets a bend. */
export type Measured = 'outside' | 'inside' | 'apex';

/**
 * Metal used up by the bend: the neutral line's arc, A × (R + K·T).
 * Source: Machinery's Handbook, "Bending sheet metal", in its K-factor form.
 */
export const bendAllowance = ({ angle, radius, thickness, kFactor }: BendShape): number =>
  radians(angle) * (radius + kFactor * thickness);

/**
 * From the bend's tangent line to the apex of its outside surfaces, tan(A/2) × (R + T). Grows without limit towards
 * 180°. Source: as bendAllowance.
 */
const outsideSetback = ({ angle, radius, thickness }: Omit<BendShape, 'kFactor'>): number =>
  Math.tan(radians(angle) / 2) * (radius + thickness);

/**
 * From the bend's tangent line to the point that a flange is measured to.
 * `apex`: where the outside surfaces meet. `outside`: what a square laid against the part reads; up to 90° that is the
 * apex, beyond 90° the outermost point of the bend itself, R + T. `inside`: the same on the inner surfaces.
 * Source: DIN 6935 (cold bending of flat steel), whose compensation takes off 2(r + s) for sharp corners and
 * 2(r + s)·tan(A/2) for the others.
 */
export function setback(measured: Measured, bend: Omit<BendShape, 'kFactor'>): number {
  if (measured === 'apex') return outsideSetback(bend);
  const reach = Math.tan(radians(Math.min(bend.angle, 90)) / 2);
  return reach * (measured === 'outside' ? bend.radius + bend.thickness : bend.radius);
}

/**
 * The K-factor that a test strip shows: K = (BA/A − R)/T, with BA the strip's length before bending less its two flats
 * after. A fitted K above 0.5 means that the real radius is larger than the nominal one.
 * @returns not limited to any range; NaN never comes out for positive angle and thickness
 * Source: bendAllowance solved for K.
 */
export const kFactorFromTest = (strip: {
  readonly blank: number;
  readonly flats: number;
  readonly angle: number;
  readonly radius: number;
  readonly thickness: number;
}): number => ((strip.blank - strip.flats) / radians(strip.angle) - strip.radius) / strip.thickness;
