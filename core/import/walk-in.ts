import { formatLength, MM_PER_INCH, parseLength, type LengthUnits } from '../units/length.ts';
import { bad, good, problem, type Problem, type Result } from '../result.ts';
import type { Shop } from '../shop/state.ts';

/** What a line of plain text asks to be cut, as it was understood. */
export interface WalkInCut {
  readonly pieces: number;
  readonly girthMm: number;
  readonly lengthMm: number;
  readonly materialId: string;
  readonly gauge: string;
  readonly colourId: string;
}

const EXAMPLE = '5 @ 9 1/2 in x 10 ft, 26 ga, moss';
const wrong = (field: string, message: string, advice: string): Problem =>
  problem('walk-in', field, message, advice);

/**
 * Reads a cut as it is said at the counter: pieces @ girth x length, gauge, colour, and the material where several are
 * kept. Bare lengths are in the shop's units.
 * @returns what was understood; or one sentence for each thing that was not
 */
export function parseWalkIn(shop: Shop, text: string): Result<WalkInCut> {
  const [sizes = '', ...words] = text.split(',').map((word) => word.trim());
  const [, count, girth, length] = /^(\d+)\s*(?:@|of|at|pcs?\b\.?)\s*(.+?)\s*[x×]\s*(.+)$/i.exec(sizes) ?? [];
  if (count === undefined || girth === undefined || length === undefined)
    return bad(
      wrong('size', `“${sizes}” does not say pieces, girth and length.`, `Write it like ${EXAMPLE}.`),
    );
  const { units } = shop.settings;
  const width = parseLength(girth, units);
  const long = parseLength(length, units);
  const metal = metalIn(shop, words.filter(Boolean));
  const problems: Problem[] = [
    ...(width.ok ? [] : width.problems),
    ...(long.ok ? [] : long.problems),
    ...(metal.ok ? [] : metal.problems),
  ];
  const pieces = Number(count);
  if (pieces < 1 || pieces > 100_000)
    problems.push(wrong('pieces', `${count} pieces cannot be asked for.`, 'Ask for 1 to 100,000.'));
  for (const [what, size] of [
    ['girth', width],
    ['length', long],
  ] as const)
    if (size.ok && (size.value <= 0 || size.value > 50_000))
      problems.push(
        wrong(what, `The ${what} must be above 0 and at most 50 m.`, `Write it like ${EXAMPLE}.`),
      );
  if (!width.ok || !long.ok || !metal.ok || problems.length > 0) return bad(...problems);
  return good({ pieces, girthMm: width.value, lengthMm: long.value, ...metal.value });
}

/**
 * A cut as one line that `parseWalkIn` reads back as the very same, to the hundredth of a millimetre: sizes as fractions
 * of an inch where they are whole sixty-fourths and the shop works in inches, else in millimetres.
 */
export function walkInWords(shop: Shop, cut: WalkInCut): string {
  const named = (rows: readonly { id: string; name: string }[], id: string): string => {
    const name = rows.find((row) => row.id === id)?.name ?? id;
    return name.includes(',') ? id : name;
  };
  const { units } = shop.settings;
  return [
    `${cut.pieces} @ ${exactly(cut.girthMm, units)} x ${exactly(cut.lengthMm, units)}`,
    `${cut.gauge} ga`,
    named(shop.colour, cut.colourId),
    named(shop.material, cut.materialId),
  ].join(', ');
}

function exactly(sizeMm: number, units: LengthUnits): string {
  const parts = (sizeMm / MM_PER_INCH) * 64;
  const whole = Math.abs(parts - Math.round(parts)) < 1e-6;
  if (units === 'in' && whole) return formatLength(sizeMm, 'in', { fraction: 64 });
  return `${Math.round(sizeMm * 100) / 100} mm`;
}

type Metal = Pick<WalkInCut, 'materialId' | 'gauge' | 'colourId'>;

function metalIn(shop: Shop, words: readonly string[]): Result<Metal> {
  const plain = (text: string): string =>
    text
      .toLowerCase()
      // "24 ga" and "24ga", but not the end of a colour's name.
      .replace(/(?<=\d\s*)(ga|gauge)\.?$/, '')
      .trim();
  const said = words.map(plain);
  const named = <T extends { id: string; name: string }>(rows: readonly T[]): T | undefined =>
    rows.find((row) => said.includes(row.id.toLowerCase()) || said.includes(row.name.toLowerCase()));
  const colour = named(shop.colour);
  const material = named(shop.material);
  const problems: Problem[] = [];
  if (!colour)
    problems.push(
      wrong(
        'colour',
        'No colour was understood.',
        `Name one of ${shop.colour.map((c) => c.name).join(', ')}.`,
      ),
    );
  const gauges = (material ? [material] : shop.material).flatMap((m) =>
    m.gauges
      .filter((g) => said.includes(g.label.toLowerCase()))
      .map((g) => ({ materialId: m.id, gauge: g.label })),
  );
  const [gauge, second] = gauges;
  if (!gauge) {
    const known = (material ? [material] : shop.material).flatMap((m) => m.gauges.map((g) => g.label));
    problems.push(wrong('gauge', 'No gauge was understood.', `Name one of ${known.join(', ')}.`));
  } else if (second)
    problems.push(
      wrong(
        'material',
        `Gauge ${gauge.gauge} is kept in more than one material.`,
        `Add one of ${shop.material.map((m) => m.name).join(', ')}.`,
      ),
    );
  const understood = [
    ...(colour ? [colour.id, colour.name] : []),
    ...(material ? [material.id, material.name] : []),
  ];
  const strange = said.filter(
    (word) =>
      !understood.some((name) => name.toLowerCase() === word) &&
      !gauges.some((g) => g.gauge.toLowerCase() === word),
  );
  for (const word of strange)
    problems.push(wrong('words', `“${word}” was not understood.`, `Write it like ${EXAMPLE}.`));
  if (!colour || !gauge || problems.length > 0) return bad(...problems);
  return good({ ...gauge, colourId: colour.id });
}
