import type { Gauge, Material } from '../material/material.ts';
import type { Part } from '../part/part.ts';
import type { BlankBasis } from '../part/forming.ts';
import { RULES, type PartRules, type RuleName, type Verdict } from '../part/rules.ts';

/** What a trade rule says about a part on a machine. The machine maker's manual and local code stand above it. */
export interface Finding {
  /** `stop`: no line is planned so. `warning`: someone should look before it is run. */
  readonly severity: 'stop' | 'warning';
  /** Which rule spoke; `geometry` where the part cannot be bent at all, which no shop can take otherwise. */
  readonly rule: RuleName | 'geometry';
  /** A whole sentence with the value and the limit. */
  readonly message: string;
  /** What to do about it, a whole sentence. */
  readonly advice: string;
  readonly source: string;
}

/** A part as an order line asks for it, and how the shop computes and judges. */
export interface Asked extends BlankBasis {
  readonly part: Pick<Part, 'id' | 'name' | 'profile' | 'bendOrder'>;
  readonly material: Pick<Material, 'name' | 'metal' | 'tensileMpa' | 'temper' | 'kFactor' | 'deductions'>;
  readonly gauge: Gauge;
  readonly lengthMm: number;
  readonly partRules: PartRules;
}

/** What a rule found, before the shop's verdict. */
export type Found = Pick<Finding, 'message' | 'advice'> & { readonly rule: RuleName };

export const found = (rule: RuleName, message: string, advice: string): Found => ({ rule, message, advice });

/** The shop's verdict on a rule: its own, else the usual one. */
const verdictOf = (rule: RuleName, partRules: PartRules): Verdict => partRules[rule] ?? RULES[rule].verdict;

/** What was found, as the shop judges it; rules that it switched off say nothing. */
export const judged = (all: readonly Found[], partRules: PartRules): Finding[] =>
  all.flatMap(({ rule, message, advice }): Finding[] => {
    const severity = verdictOf(rule, partRules);
    return severity === 'off' ? [] : [{ severity, rule, message, advice, source: RULES[rule].source }];
  });
