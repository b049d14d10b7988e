import type { ChangeoverRules } from '../shop/machine.ts';
import type { Stage } from '../part/stage.ts';

/**
 * Changeover of a new machine until the shop puts in its own figures, whole seconds; all of it common practice, no
 * source.
 * Shear: put the stack back, clean the bed, stage and label the next, 10 min whatever differs; it is one walk, so the
 * largest counts. Brake: program and stops for a new profile 5 min; another V for another gauge, quick clamps, 10 min;
 * trial bends in another metal 3 min; one after the other, so they add up. A bench has none. The first piece is in the estimate.
 */
export const defaultChangeover = (stage: Stage): ChangeoverRules => {
  if (stage === 'shear')
    return { combine: 'max', attributes: { material: 600, gauge: 600, colour: 600 }, exceptions: [] };
  const attributes = stage === 'brake' ? { profile: 300, gauge: 600, material: 180 } : {};
  return { combine: 'sum', attributes, exceptions: [] };
};

/**
 * Usual seconds to change the tools of a brake: die and punch 30 min with usual clamps, hemming tools in or out 10 min.
 * Common practice, no source.
 */
export const TOOL_CHANGEOVER = { tools: 1800, hemming: 600 } as const;

/**
 * A brake's rules with changeovers by its tools: another gauge costs nothing any more, since gauges that share a V share the
 * tools and others change them; all its other figures stay.
 */
export function byTools({ attributes, exceptions, ...rules }: ChangeoverRules): ChangeoverRules {
  const kept = { ...attributes };
  delete kept.gauge;
  return {
    ...rules,
    attributes: { ...TOOL_CHANGEOVER, ...kept },
    exceptions: exceptions.filter(({ attribute }) => attribute !== 'gauge'),
  };
}
