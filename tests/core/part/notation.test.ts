import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { NOTATION_EXAMPLE, readProfile, writeProfile } from '../../../core/part/notation.ts';
import { profile as schema, type Profile } from '../../../core/part/profile.ts';
import { aProfile, closedHem, square } from './profiles.ts';

const inches = { units: 'in', decimals: 'point' } as const;
const german = { units: 'mm', decimals: 'comma' } as const;

const read = (text: string, style: Parameters<typeof readProfile>[1] = inches): Profile => {
  const result = readProfile(text, style);
  if (!result.ok) throw new Error(result.issues.map(({ message }) => message).join(' '));
  return result.value;
};
const refusals = (text: string, style: Parameters<typeof readProfile>[1] = inches) => {
  const result = readProfile(text, style);
  return result.ok ? [] : result.issues;
};

const places = (value: number): number => Number(value.toFixed(9));
/** A length as shops type it, or as a drawing program hands it over; to nine places. */
const length = (max: number) =>
  fc.oneof(
    fc.integer({ min: 1, max: Math.floor((max / 25.4) * 64) }).map((parts) => places((parts / 64) * 25.4)),
    fc.integer({ min: 1, max: max * 10 }).map((tenths) => tenths / 10),
    fc.double({ min: 0.001, max, noNaN: true }).map(places),
  );
const direction = fc.constantFrom('up', 'down');
const hem = fc.oneof(
  fc.record({ kind: fc.constant('closed'), lengthMm: length(100), direction }),
  fc.record(
    { kind: fc.constantFrom('open', 'teardrop'), lengthMm: length(100), direction, gapMm: length(50) },
    { requiredKeys: ['kind', 'lengthMm', 'direction'] },
  ),
);
const bend = fc.record({
  angle: fc.oneof(
    fc.integer({ min: 1, max: 179 }),
    fc.double({ min: 0.01, max: 179.9, noNaN: true }).map(places),
  ),
  direction,
  radiusMm: fc.option(fc.oneof(fc.constant(0), length(500))),
});
const anyProfile = fc.integer({ min: 1, max: 30 }).chain((flanges) =>
  fc.record({
    flangesMm: fc.array(length(5000), { minLength: flanges, maxLength: flanges }),
    bends: fc.array(bend, { minLength: flanges - 1, maxLength: flanges - 1 }),
    startHem: fc.option(hem),
    endHem: fc.option(hem),
    measured: fc.constantFrom('outside', 'inside', 'apex'),
    paintedSide: direction,
  }),
) as fc.Arbitrary<Profile>;

describe('A profile as text', () => {
  it('is read step by step from one edge to the other', () => {
    expect(read('in: hem 1/2 closed up; 4 1/2; 90 up; 2; 45 down r 1/16; 1/2')).toEqual({
      ...aProfile(),
      startHem: closedHem(12.7),
      flangesMm: [114.3, 50.8, 12.7],
      bends: [square(), { angle: 45, direction: 'down', radiusMm: 1.5875 }],
    });
  });

  it('is written as it is read', () => {
    const profile = aProfile({
      flangesMm: [114.3, 50.8],
      endHem: { kind: 'open', lengthMm: 9.525, direction: 'down' },
      measured: 'inside',
      paintedSide: 'down',
    });
    expect(writeProfile(profile, inches)).toBe(
      'in: 4 1/2; 90 up; 2; hem 3/8 open down; measured inside; paint down',
    );
  });

  it('has the gap of a hem, wherever among its words it stands', () => {
    const hemOf = (text: string) => read(`in: ${text}; 2`).startHem;
    const open = { kind: 'open', lengthMm: 12.7, direction: 'up', gapMm: 3.175 };
    expect(hemOf('hem 1/2 open up gap 1/8')).toEqual(open);
    expect(hemOf('hem 1/2 open gap 1/8 up')).toEqual(open);
    expect(hemOf('Hem open gap 1/8 in up 1/2')).toMatchObject({ kind: 'open', gapMm: 3.175 });
    expect(hemOf('hem 1/2 teardrop down')).toEqual({ kind: 'teardrop', lengthMm: 12.7, direction: 'down' });
    const profile = aProfile({
      startHem: { kind: 'teardrop', lengthMm: 12.7, direction: 'up', gapMm: 3.175 },
    });
    expect(writeProfile(profile, inches)).toMatch(/^in: hem 1\/2 teardrop up gap 1\/8; /);
  });

  it('refuses a gap of a closed hem, one without a figure and one that no hem has', () => {
    const said = (text: string) => refusals(`in: ${text}; 2`).map(({ message }) => message);
    expect(said('hem 1/2 closed up gap 1/8')).toEqual([
      'Step 1, “hem 1/2 closed up gap 1/8”: a closed hem has no gap.',
    ]);
    expect(said('hem 1/2 open up gap')).toHaveLength(1);
    expect(said('hem 1/2 open up gap 3')[0]).toMatch(/The gap of a hem must be above 0 and at most /);
  });

  it('reads back as it was, in every shop', () => {
    fc.assert(
      fc.property(
        anyProfile,
        fc.constantFrom<'in' | 'mm'>('in', 'mm'),
        fc.constantFrom<'point' | 'comma'>('point', 'comma'),
        (profile, units, decimals) => {
          const text = writeProfile(profile, { units, decimals });
          expect(read(text, { units, decimals })).toEqual(profile);
        },
      ),
      { numRuns: 500 },
    );
  });

  it('means the same in a shop with other units, since the unit stands in front', () => {
    const profile = aProfile({ flangesMm: [114.3, 50.8] });
    expect(read(writeProfile(profile, inches), { units: 'mm', decimals: 'point' })).toEqual(profile);
  });

  it('takes bare figures in the units of the shop, and units behind single figures', () => {
    expect(read('60; 90 up; 4 cm', german).flangesMm).toEqual([60, 40]);
    expect(read('1 1/2; 90 up; 40 mm').flangesMm).toEqual([38.1, 40]);
  });

  it('may be parted by lines or bars, and end with a mark', () => {
    expect(read('60\n90 up\n40\n', german)).toEqual(aProfile());
    expect(read('60 | 90° UP | 40;', german)).toEqual(aProfile());
  });

  it('has decimals behind the comma of the shop', () => {
    expect(read('60,5; 87,5 up r 1,2; 40', german)).toEqual({
      ...aProfile({ flangesMm: [60.5, 40] }),
      bends: [{ angle: 87.5, direction: 'up', radiusMm: 1.2 }],
    });
  });

  it('is never guessed: a figure that can be two is refused with both', () => {
    const [issue] = refusals('1,234; 90 up; 40', { units: 'mm', decimals: null });
    expect(issue).toMatchObject({ field: 'step 1', subject: 'profile' });
    expect(issue?.meanings?.map(({ means }) => means)).toEqual(['1234 mm', '1.234 mm']);
  });

  it.each([
    ['4 1/2; 90 sideways; 2', 'step 2', 'Step 2, “90 sideways”: it is neither a flange, a bend nor a hem'],
    ['4; 2', 'step 2', 'a bend must stand between two flanges'],
    ['4; 90 up', 'step 2', 'a bend stands between two flanges'],
    ['90 up; 4', 'step 1', 'a bend stands between two flanges'],
    ['4; 90 up; hem 1/2 closed up; 2', 'step 3', 'a hem stands at an edge'],
    ['hem 1/2 up; 4', 'step 1', 'a hem needs its kind and its direction'],
    ['hem 5 closed up; 4', 'step 1', 'The lip of a hem must be above 0 and at most 3 15/16 in'],
    ['4; 180 up; 2', 'step 2', 'more than 0° and less than 180°'],
    ['300 ft; 90 up; 2', 'step 1', 'A flange must be above 0 and at most 196.85 in'],
    ['4;; 2', 'step 2', 'nothing stands there'],
    ['4; 90 up r 30; 2', 'step 2', 'a radius is at most'],
    ['4; paint left', 'step 2', 'the paint cannot be “left”'],
    ['4; paint up; paint down', 'step 3', 'said twice'],
    ['furlongs: 4', 'profile', 'is no unit'],
    ['', 'step 1', 'nothing stands there'],
    ['hem 1/2 closed up', 'profile', 'at least one flange'],
  ])('refuses “%s” and says where', (text, field, words) => {
    const issues = refusals(text);
    expect(issues.map((one) => one.field)).toContain(field);
    expect(issues.map(({ message }) => message).join(' ')).toContain(words);
  });

  it('names every step that is wrong at once', () => {
    expect(refusals('x; 90 up; y').map(({ field }) => field)).toEqual(['step 1', 'step 3']);
  });

  it('is a profile that can be kept, or refused, whatever is typed', () => {
    const words = fc.constantFrom(
      'hem',
      'up',
      'down',
      'r',
      ';',
      '|',
      'in:',
      '4',
      '1/2',
      '90',
      'closed',
      'paint',
      'measured',
      '1,234',
      '°',
    );
    const typed = fc.oneof(
      fc.array(words, { maxLength: 20 }).map((all) => all.join(' ')),
      fc.string(),
    );
    fc.assert(
      fc.property(typed, (text) => {
        const result = readProfile(text, inches);
        if (result.ok) expect(schema.safeParse(result.value).success).toBe(true);
        else expect(result.issues.every(({ message, advice }) => message !== '' && advice !== '')).toBe(true);
      }),
      { numRuns: 1000 },
    );
  });

  it('has examples that read', () => {
    for (const units of ['in', 'mm'] as const)
      expect(readProfile(NOTATION_EXAMPLE[units], { units, decimals: 'point' }).ok).toBe(true);
  });
});
