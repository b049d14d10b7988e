import type { Gauge, Material } from '../shop/material.ts';
import type { Part } from '../shop/part.ts';
import type { Settings } from '../shop/settings.ts';

/** What a trade rule says about a part on a machine. The machine maker's manual and local code stand above it. */
export interface Finding {
  /** `stop`: the machine cannot or must not do it. `warning`: someone should look before it is run. */
  readonly severity: 'stop' | 'warning';
  /** Which rule spoke; a short stable name. */
  readonly rule: string;
  /** A whole sentence with the value and the limit. */
  readonly message: string;
  /** What to do about it, a whole sentence. */
  readonly advice: string;
  readonly source: string;
}

/** A part as an order line asks for it. */
export interface Asked {
  readonly part: Pick<Part, 'id' | 'name' | 'profile'>;
  readonly material: Pick<Material, 'name' | 'metal' | 'tensileMpa' | 'kFactor'>;
  readonly gauge: Gauge;
  readonly lengthMm: number;
  readonly girthRule: Settings['girthRule'];
}

export const COMMON_PRACTICE = 'common practice, no source';

/** One finding, its parts in reading order. */
export const finding = (
  severity: Finding['severity'],
  rule: string,
  message: string,
  advice: string,
  source: string,
): Finding => ({ severity, rule, message, advice, source });
