import type { Hem, Profile } from './profile.ts';

/** One act of the brake, named as people say it: "bend 2", "fold start hem", "close start hem". */
export type BendStep = string;

/** A hem is folded to this angle first, then closed (common practice, no source: 30° to 45° left open). */
const FOLD_ANGLE = 135;

/** A place where the piece folds, between two of its straight lengths. */
interface Joint {
  /** Degrees turned through when it is done; 180 for a hem. */
  readonly angle: number;
  readonly direction: 'up' | 'down';
  readonly hem: 'start' | 'end' | null;
}

/** The cross-section as straight lengths and the joints between them, read from the first edge; metal has no thickness here. */
export interface Chain {
  readonly lengthsMm: readonly number[];
  readonly joints: readonly Joint[];
}

const hemJoint = (hem: Hem, edge: 'start' | 'end'): Joint => ({
  angle: 180,
  direction: hem.direction,
  hem: edge,
});

export function chainOf({ flangesMm, bends, startHem, endHem }: Profile): Chain {
  return {
    lengthsMm: [...(startHem ? [startHem.lengthMm] : []), ...flangesMm, ...(endHem ? [endHem.lengthMm] : [])],
    joints: [
      ...(startHem ? [hemJoint(startHem, 'start')] : []),
      ...bends.map(({ angle, direction }) => ({ angle, direction, hem: null })),
      ...(endHem ? [hemJoint(endHem, 'end')] : []),
    ],
  };
}

/** What a step does: to which joint, and the angle it turns the joint from and to. */
export interface Act {
  readonly step: BendStep;
  readonly joint: number;
  readonly from: number;
  readonly to: number;
}

/** Every act that the profile asks for, read from the first edge to the last. */
export function actsOf(chain: Chain): Act[] {
  const first = chain.joints[0]?.hem === 'start' ? 1 : 0;
  return chain.joints.flatMap(({ angle, hem }, joint): Act[] =>
    hem === null
      ? [{ step: `bend ${joint - first + 1}`, joint, from: 0, to: angle }]
      : [
          { step: `fold ${hem} hem`, joint, from: 0, to: FOLD_ANGLE },
          { step: `close ${hem} hem`, joint, from: FOLD_ANGLE, to: 180 },
        ],
  );
}

/** The steps of a profile from edge to edge, "fold start hem", "close start hem", "bend 1" … */
export const stepsOf = (profile: Profile): BendStep[] => actsOf(chainOf(profile)).map(({ step }) => step);

/** Whether a list names every step of a profile once, a hem's fold before its closing. */
export function isOrderOf(profile: Profile, steps: readonly BendStep[]): boolean {
  const all = stepsOf(profile);
  const at = (step: BendStep): number => steps.indexOf(step);
  return (
    steps.length === all.length &&
    all.every((step) => at(step) !== -1) &&
    (['start', 'end'] as const).every((edge) => at(`fold ${edge} hem`) <= at(`close ${edge} hem`))
  );
}
