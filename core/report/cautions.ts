import type { Stage } from '../part/stage.ts';

/**
 * What is said wherever someone acts on our output: on every paper, in the file of steps, beside cutting and bending
 * figures, before someone works on a machine that is down, and where hours are added. In our own words; common practice,
 * no source, but for lock-out (the principle of 29 CFR 1910.147). They are reminders: they replace no rule, manual or
 * training.
 */
export interface Cautions {
  /** Who has the last word; stands first. */
  readonly governs: string;
  readonly points: readonly string[];
}

const GOVERNS =
  'Local codes, the machine maker’s manual and your employer’s procedure come before anything printed or shown here.';

const LOCK_OUT = 'Lock out and tag out before clearing, changing blades or dies, or servicing.';

const AT_MACHINES = [
  'Only people trained and authorised on this machine run it.',
  LOCK_OUT,
  'Check thickness and material against the machine’s plate before the first piece.',
] as const;

const EVERYWHERE = [
  'Edges cut: wear eye protection, and gloves where your procedure allows them.',
  'Two people or a lift aid where it says so here.',
] as const;

const SIGNAL =
  'Where two people work, no stroke without the signal that they agreed on; one of them has the pedal.';

/** Beside every setting that strokes run on at. */
export const CONTINUOUS_ONLY = 'only where set up and guarded for it';

/** The one that is read from across the shop; the points beside it say the rest. */
const FAR: Readonly<Record<Stage, string>> = {
  shear: 'Hands clear',
  brake: 'Hands clear',
  notch: 'Hands clear',
  end: 'Ventilate',
  outside: 'Edges covered',
  pack: 'Lift with legs',
};
export const farCaution = (stage: Stage): string => FAR[stage];

const AT: Readonly<Record<Stage, readonly string[]>> = {
  shear: [
    'Finger guard and hold-downs in place and tested before the first cut.',
    'Hands clear of the blade and the hold-downs.',
    'A piece too small for the gauge or the hold-downs is cut on a machine made for narrow strips; never hold it by hand.',
    'Nobody behind the shear while it cycles.',
    `Single stroke, the pedal covered; continuous strokes ${CONTINUOUS_ONLY}.`,
    SIGNAL,
  ],
  brake: [
    'Guards or light curtain in place and tested before the first piece.',
    'Hands clear of punch and die; hold the piece where it cannot pinch, and a piece too small for that never by hand.',
    `Single stroke, the pedal covered; anything else ${CONTINUOUS_ONLY}.`,
    SIGNAL,
    'Watch for the piece whipping up, and for pinching at the back gauge.',
    'Check force and tool rating against the plates of machine and tools; flattening a hem takes far more force than a bend.',
  ],
  notch: [
    'Guards of the notcher or punch in place and tested before the first piece; hands clear of blade and punch.',
    'Hold long pieces so that they cannot tip or whip.',
  ],
  end: [
    'Solder, flux and coatings: ventilate, and keep what burns away from the flame; let pieces cool before they are handled.',
  ],
  outside: ['Secure pieces for the way, edges covered.'],
  pack: [
    'Lift with the legs; cut edges covered before pieces are bundled, straps tightened away from the face.',
  ],
};

const WITH_MACHINE: readonly Stage[] = ['shear', 'notch', 'brake'];

/** The cautions of a stage, its own before those of every machine; a bench without a machine has none of these. */
export const cautionsFor = (stage: Stage): Cautions => cautionsAlong([stage]);

/** What goes along with a piece through its steps: the cautions of each, those of every machine once. */
export const cautionsAlong = (stages: readonly Stage[]): Cautions => ({
  governs: GOVERNS,
  points: [
    ...new Set([
      ...stages.flatMap((stage) => AT[stage]),
      ...(stages.some((stage) => WITH_MACHINE.includes(stage)) ? AT_MACHINES : []),
      ...EVERYWHERE,
    ]),
  ],
});

/** Before someone goes to a machine that is down: lock-out stands first. */
export const cautionsWhenDown = (stage: Stage): Cautions => ({
  governs: `Before anyone works on it: lock out, tag out and try it. ${GOVERNS}`,
  points: cautionsFor(stage).points.filter((point) => point !== LOCK_OUT),
});

/** Before a machine that was down runs again. Source: the principle of 29 CFR 1910.147(e), release from lock-out. */
export const cautionsWhenBack = (stage: Stage): Cautions => ({
  governs: `Before it runs again: tools and rags out, guards on, everyone clear and told; each lock is taken off by whoever put it on. ${GOVERNS}`,
  points: cautionsFor(stage).points,
});

/** Where a machine is kept open for longer. */
export const OVERTIME_CAUTION =
  'Check the rules on working hours and rest first; nobody works alone at a shear or a brake.';

/** What stands at the foot of every printed page, however many there are. */
export const pageFoot = (machineName: string, { governs }: Cautions): string =>
  `${machineName}: guards on, hands clear, lock out before clearing. ${governs}`;
