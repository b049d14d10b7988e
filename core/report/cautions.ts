import type { Stage } from '../shop/machine.ts';

/**
 * What is said wherever someone acts on our output: on every dispatch list and beside cutting and bending figures. In
 * our own words; common practice, no source. They are reminders: they replace no rule, manual or training.
 */
export interface Cautions {
  /** Who has the last word; stands first. */
  readonly governs: string;
  readonly points: readonly string[];
}

const GOVERNS =
  'Local codes, the machine maker’s manual and your employer’s procedure come before anything printed or shown here.';

const EVERY_MACHINE = [
  'Only people trained and authorised on this machine run it.',
  'Lock out and tag out before clearing, changing blades or dies, or servicing.',
  'Check thickness and material against the machine’s plate before the first piece.',
  'Edges cut: wear eye protection, and gloves where your procedure allows them.',
  'Two people or a lift aid where it says so here.',
] as const;

const AT: Readonly<Record<Stage, readonly string[]>> = {
  shear: [
    'Finger guard and hold-downs in place and tested before the first cut.',
    'Hands clear of the blade and the hold-downs; never hold a short strip by hand.',
    'Nobody behind the shear while it cycles.',
    'Single stroke unless it is set up and guarded for more; keep the pedal covered.',
  ],
  brake: [
    'Guards or light curtain in place and tested before the first piece.',
    'Hands clear of punch and die; hold the piece where it cannot pinch, never a short one by hand.',
    'Watch for the piece whipping up, and for pinching at the back gauge.',
    'Check force and tool rating against the plates of machine and tools; flattening a hem takes far more force than a bend.',
  ],
};

/** The cautions of a stage, those of the machine before those of every machine. */
export const cautionsFor = (stage: Stage): Cautions => ({
  governs: GOVERNS,
  points: [...AT[stage], ...EVERY_MACHINE],
});

/** What stands at the foot of every printed page, however many there are. */
export const pageFoot = (machineName: string, { governs }: Cautions): string =>
  `${machineName}: guards on, hands clear, lock out before clearing. ${governs}`;
