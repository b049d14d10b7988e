import { MOST } from '../input-limits.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import {
  formatLength,
  parseLength,
  unitNamed,
  type LengthStyle,
  type LengthUnits,
  type Units,
} from '../units/length.ts';
import { readNumber, writeNumber } from '../units/number.ts';
import { hem as hemSchema, MOST_OF_A_PROFILE, type Hem, type Profile } from './profile.ts';

/**
 * A profile as one line of text, our own notation, read from one edge to the other as the part editor shows it:
 *
 *     in: hem 1/2 closed up; 4 1/2; 90 up; 2; 45 down r 1/16; 1/2
 *
 * Steps are parted by semicolons (or upright bars, or lines): a flange is a length, a bend the degrees it turns and where
 * to, with `r` and its inside radius where the die does not make it; a hem has its lip, its kind and where to, and `gap`
 * with the clear space in it where that is not one thickness: `hem 3/8 open up gap 1/8`. In front may stand the unit of bare
 * figures; each figure can have its own. `measured inside` or `measured apex` and `paint down`
 * stand behind where it is so: without them flanges are measured over the outside and the paint is up.
 */

type Bend = Profile['bends'][number];
type Step =
  | { readonly is: 'flange'; readonly lengthMm: number }
  | { readonly is: 'bend'; readonly bend: Bend }
  | { readonly is: 'hem'; readonly hem: Hem }
  | { readonly is: 'measured'; readonly measured: Profile['measured'] }
  | { readonly is: 'paint'; readonly side: Profile['paintedSide'] };

/** One step with its place, counted from 1. */
interface Placed {
  readonly number: number;
  readonly text: string;
  readonly step: Step;
}

/** A step as the notation writes it, for sentences. */
export const NOTATION_EXAMPLE: Readonly<Record<LengthUnits, string>> = {
  in: 'in: hem 1/2 closed up; 4 1/2; 90 up; 2',
  mm: 'mm: hem 12 closed up; 115; 90 up; 50',
};

const MEASURED = ['outside', 'inside', 'apex'] as const;

/** Lengths and angles are kept to so many places of a millimetre or a degree: 1 1/2 in is 38.1 mm, not a hair less. */
const PLACES = 9;
const tidy = (value: number): number => Number(value.toFixed(PLACES));

/** Writes a figure so that it reads back as it is: as the shop writes lengths where that is exact. */
function writeExact(lengthMm: number, shop: Units): string {
  if (!Number.isFinite(lengthMm)) return '?';
  const short = formatLength(lengthMm, shop);
  const back = parseLength(short, { ...shop, settled: true });
  if (back.ok && tidy(back.value) === tidy(lengthMm)) return short.replace(` ${shop.units}`, '');
  return `${writeNumber(lengthMm, shop.decimals, PLACES)} mm`;
}

/** The text of a profile; `readProfile` gives the same profile back, to nine places. A figure that is missing is a question mark. */
export function writeProfile(profile: Profile, shop: Units): string {
  const length = (lengthMm: number): string => writeExact(lengthMm, shop);
  const hem = (of: Hem | null): string[] =>
    of
      ? [
          `hem ${length(of.lengthMm)} ${of.kind} ${of.direction}${of.gapMm === undefined ? '' : ` gap ${length(of.gapMm)}`}`,
        ]
      : [];
  const bend = ({ angle, direction, radiusMm }: Bend): string => {
    const turn = Number.isFinite(angle) ? writeNumber(angle, shop.decimals, PLACES) : '?';
    return `${turn} ${direction}${radiusMm === null ? '' : ` r ${length(radiusMm)}`}`;
  };
  const steps = [
    ...hem(profile.startHem),
    ...profile.flangesMm.flatMap((lengthMm, i) => {
      const after = profile.bends[i];
      return after ? [length(lengthMm), bend(after)] : [length(lengthMm)];
    }),
    ...hem(profile.endHem),
    ...(profile.measured === 'outside' ? [] : [`measured ${profile.measured}`]),
    ...(profile.paintedSide === 'up' ? [] : ['paint down']),
  ];
  return `${shop.units}: ${steps.join('; ')}`;
}

/**
 * Reads a profile in the notation above.
 * @param style of bare figures; a unit in front of the text, or behind a figure, wins
 * @returns the profile; or an issue for each step that is wrong, naming its place and, where a figure can mean two, both
 */
export function readProfile(text: string, style: LengthStyle): Result<Profile> {
  if (text.length > MOST.cellCharacters)
    return refuse(
      `The profile is ${text.length} characters long.`,
      `At most ${MOST.cellCharacters} are read.`,
    );
  const [, word = '', rest = ''] = /^\s*([^\s:;|]+)\s*:(.*)$/s.exec(text) ?? [];
  const unit = unitNamed(word);
  if (word !== '' && unit === null)
    return refuse(`“${word}” before the colon is no unit.`, 'Write in, ft, mm, cm or m there, or nothing.');
  const own = unit === null ? style : { ...style, units: unit };
  const texts = (unit === null ? text : rest).split(/[;|\n]/).map((step) => step.trim());
  const issues: Issue[] = [];
  const steps = texts.flatMap((step, i): Placed[] => {
    // An end mark behind the last step is no step.
    if (step === '' && i === texts.length - 1 && i > 0) return [];
    const read = readStep(step, own);
    if (read.ok) return [{ number: i + 1, text: step, step: read.value }];
    issues.push(...read.issues.map((one) => atStep(one, i + 1, step)));
    return [];
  });
  return issues.length > 0 ? err(...issues) : assemble(steps);
}

const refuse = (message: string, advice: string): Result<never> =>
  err(issue('profile', 'profile', message, advice));

const atStep = (one: Issue, number: number, text: string): Issue => ({
  ...one,
  subject: 'profile',
  field: `step ${number}`,
  message: `Step ${number}${text === '' ? '' : `, “${text.slice(0, 40)}”`}: ${one.message}`,
});

function readStep(text: string, style: LengthStyle): Result<Step> {
  if (text === '') return refuse('nothing stands there.', 'Remove one of the semicolons.');
  if (/^hem\b/i.test(text)) return readHem(text.slice('hem'.length).trim(), style);
  const [, side, where = ''] = /^(measured|paint)\s+(\w+)$/i.exec(text.toLowerCase()) ?? [];
  if (side !== undefined) return readSide(side, where);
  if (/\b(?:up|down)\b/i.test(text)) return readBend(text, style);
  const length = lengthOf(text, style);
  if (!length.ok && !length.issues.some(({ meanings }) => meanings))
    return refuse('it is neither a flange, a bend nor a hem.', `Write them like ${exampleIn(style)}.`);
  const flange = within(length, 'A flange', MOST_OF_A_PROFILE.flangeMm, style);
  return flange.ok ? ok({ is: 'flange', lengthMm: flange.value }) : flange;
}

function readSide(side: string, where: string): Result<Step> {
  const measured = MEASURED.find((one) => one === where);
  if (side === 'measured')
    return measured
      ? ok({ is: 'measured', measured })
      : refuse(`flanges cannot be measured “${where}”.`, 'Write measured outside, inside or apex.');
  if (where === 'up' || where === 'down') return ok({ is: 'paint', side: where });
  return refuse(`the paint cannot be “${where}”.`, 'Write paint up or paint down.');
}

function readBend(text: string, style: LengthStyle): Result<Step> {
  const [, degrees, direction, radius] =
    /^(\S+?)\s*(?:°|deg\.?)?\s+(up|down)(?:\s+r\s*(.+))?$/i.exec(text) ?? [];
  if (degrees === undefined || direction === undefined)
    return refuse('it is no bend.', 'Write the degrees it turns and where to: 90 up, or 45 down r 1/16.');
  const angle = readNumber(degrees, style, 'bend');
  const radiusMm = radius === undefined ? ok(null) : readRadius(radius, style);
  if (!angle.ok) return angle;
  if (!radiusMm.ok) return radiusMm;
  const turn = tidy(angle.value);
  if (!(turn > 0 && turn < 180))
    return refuse('a bend turns by more than 0° and less than 180°.', 'A full fold is a hem.');
  return ok({
    is: 'bend',
    bend: {
      angle: turn,
      direction: direction.toLowerCase() as Bend['direction'],
      radiusMm: radiusMm.value,
    },
  });
}

const lengthOf = (text: string, style: LengthStyle): Result<number> => {
  const length = parseLength(text, style);
  return length.ok ? ok(tidy(length.value)) : length;
};

function readRadius(text: string, style: LengthStyle): Result<number> {
  const radius = lengthOf(text, style);
  if (!radius.ok || radius.value <= MOST_OF_A_PROFILE.radiusMm) return radius;
  return refuse(`a radius is at most ${limitIn(MOST_OF_A_PROFILE.radiusMm, style)}.`, 'Correct it.');
}

const KINDS: readonly string[] = hemSchema.shape.kind.options;
/** The gap of a hem, wherever it stands: its length ends where another word of the hem begins. */
const GAP = new RegExp(`\\bgap\\b\\s*(.*?)(?=\\s+(?:up|down|${KINDS.join('|')})\\b|$)`);

function readHem(whole: string, style: LengthStyle): Result<Step> {
  const lower = whole.toLowerCase();
  const gap = GAP.exec(lower)?.[1];
  const words = lower.replace(GAP, '').trim().split(/\s+/);
  const kind = words.filter((word) => KINDS.includes(word));
  const direction: readonly string[] = words.filter((word) => word === 'up' || word === 'down');
  const length = words.filter((word) => !kind.includes(word) && !direction.includes(word)).join(' ');
  if (kind.length !== 1 || direction.length !== 1)
    return refuse(
      'a hem needs its kind and its direction.',
      `Write it like hem 1/2 closed up; kinds are ${KINDS.slice(0, -1).join(', ')} and ${KINDS.at(-1)}, directions up and down.`,
    );
  const lengthMm = within(lengthOf(length, style), 'The lip of a hem', MOST_OF_A_PROFILE.lipMm, style);
  if (!lengthMm.ok) return lengthMm;
  const gapMm =
    gap === undefined
      ? null
      : within(lengthOf(gap, style), 'The gap of a hem', MOST_OF_A_PROFILE.gapMm, style);
  if (gapMm !== null && kind[0] === 'closed')
    return refuse('a closed hem has no gap.', 'Leave the gap out, or write open or teardrop.');
  if (gapMm !== null && !gapMm.ok) return gapMm;
  return ok({
    is: 'hem',
    hem: {
      lengthMm: lengthMm.value,
      kind: kind[0] as Hem['kind'],
      direction: direction[0] as Hem['direction'],
      ...(gapMm === null ? {} : { gapMm: gapMm.value }),
    },
  });
}

function within(length: Result<number>, what: string, mostMm: number, style: LengthStyle): Result<number> {
  if (!length.ok || (length.value > 0 && length.value <= mostMm)) return length;
  return refuse(`${what} must be above 0 and at most ${limitIn(mostMm, style)}.`, 'Correct it.');
}

const shopUnits = ({ units }: LengthStyle): LengthUnits => (units === 'in' || units === 'ft' ? 'in' : 'mm');
const limitIn = (mostMm: number, style: LengthStyle): string =>
  formatLength(mostMm, { units: shopUnits(style), decimals: style.decimals ?? 'point' });
const exampleIn = (style: LengthStyle): string => NOTATION_EXAMPLE[shopUnits(style)];

/** Puts steps together: flanges with a bend between each two, hems at the edges, what holds for all behind. */
function assemble(steps: readonly Placed[]): Result<Profile> {
  const flangesMm: number[] = [];
  const bends: Bend[] = [];
  const hems: { startHem: Hem | null; endHem: Hem | null } = { startHem: null, endHem: null };
  const whole: { measured?: Profile['measured']; paintedSide?: Profile['paintedSide'] } = {};
  const issues: Issue[] = [];
  const wrong = ({ number, text }: Placed, message: string, advice: string): void =>
    void issues.push(atStep(issue('profile', 'profile', message, advice), number, text));
  const shape = steps.filter(({ step }) => step.is !== 'measured' && step.is !== 'paint');
  for (const [i, placed] of shape.entries()) {
    const { step } = placed;
    if (step.is === 'hem') {
      if (i === 0) hems.startHem = step.hem;
      else if (i === shape.length - 1) hems.endHem = step.hem;
      else wrong(placed, 'a hem stands at an edge.', 'Write it first or last.');
    } else if (step.is === 'flange') {
      if (flangesMm.length > bends.length)
        wrong(placed, 'a bend must stand between two flanges.', 'Write one before it, like 90 up.');
      flangesMm.push(step.lengthMm);
    } else if (step.is === 'bend') {
      if (bends.length >= flangesMm.length || shape[i + 1]?.step.is !== 'flange')
        wrong(placed, 'a bend stands between two flanges.', 'Write a flange on either side of it.');
      bends.push(step.bend);
    }
  }
  for (const placed of steps) {
    const { step } = placed;
    if (step.is !== 'measured' && step.is !== 'paint') continue;
    const field = step.is === 'paint' ? 'paintedSide' : 'measured';
    if (field in whole) wrong(placed, 'it is said twice.', 'Keep one of them.');
    if (step.is === 'paint') whole.paintedSide = step.side;
    else whole.measured = step.measured;
  }
  if (issues.length > 0) return err(...issues);
  if (flangesMm.length === 0) return refuse('A profile needs at least one flange.', 'Write its length.');
  if (flangesMm.length > MOST_OF_A_PROFILE.flanges)
    return refuse(
      `${flangesMm.length} flanges are too many.`,
      `At most ${MOST_OF_A_PROFILE.flanges} can be kept.`,
    );
  return ok({ flangesMm, bends, ...hems, measured: 'outside', paintedSide: 'up', ...whole });
}
