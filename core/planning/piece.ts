import { countCuts } from '../estimate/shear.ts';
import type { Gauge, Material, Sheet } from '../material/material.ts';
import { blankOf, type Blank } from '../part/blank.ts';
import { blankBasisOf } from '../part/forming.ts';
import type { Part } from '../part/part.ts';
import { err, issue, ok, type Issue, type Result } from '../result.ts';
import { metalName, metalWords } from '../shop/metal-name.ts';
import type { OrderLine } from '../shop/order.ts';
import type { Shop } from '../shop/state.ts';

/** What a line asks for one of: the part in its metal, flat, and the sheet that it is cut from. */
export interface Piece {
  readonly part: Part;
  readonly material: Material;
  readonly gauge: Gauge;
  readonly blank: Blank;
  readonly sheet: Sheet;
}

/** @param part the line's, as far as it is there; so the material */
export function pieceOf(
  shop: Shop,
  part: Part | undefined,
  material: Material | undefined,
  line: OrderLine,
): Result<Piece> {
  const subject = `line ${line.id}`;
  const gauge = material?.gauges.find((g) => g.label === line.gauge);
  if (!part)
    return err(
      issue(
        subject,
        'part',
        `Line ${line.id} asks for part ${line.partId}, which is not there.`,
        'Choose another part.',
      ),
    );
  if (!material || !gauge)
    return err(
      issue(
        subject,
        'gauge',
        `Line ${line.id} asks for ${metalWords({ gauge: line.gauge, material: material?.name ?? line.materialId })}, which is not kept.`,
        'Choose another gauge.',
      ),
    );
  const blank = blankOf(line, part, material, gauge, blankBasisOf(shop));
  if (!blank.ok) return blank;
  const sheet = cheapestSheet(shop, line, blank.value);
  return sheet.ok ? ok({ part, material, gauge, blank: blank.value, sheet: sheet.value }) : sheet;
}

/** The sheet size in the line's own material, gauge and colour that costs least for each blank it yields. */
function cheapestSheet(shop: Shop, line: OrderLine, blank: Blank): Result<Sheet> {
  const sheets = sheetsFor(shop, line);
  if (!shop.machine.some((m) => m.stage === 'shear'))
    return err(issue(`line ${line.id}`, 'shear', 'The shop has no shear.', 'Add one in Shop, Machines.'));
  if (sheets.length === 0)
    return err(
      issue(
        `line ${line.id}`,
        'sheet',
        `Line ${line.id}: no sheet size of ${metalName(shop, line)} is kept.`,
        'Add one in Shop, Sheet sizes.',
      ),
    );
  let best: { sheet: Sheet; cost: number } | null = null;
  let refusal: readonly Issue[] = [];
  for (const kept of sheets) {
    const sheet = kept.form === 'coil' ? cutFromCoil(kept, blank) : kept;
    const count = countCuts({ blank, quantity: 1, sheet, units: shop.settings });
    if (!count.ok) refusal = count.issues;
    else if (best === null || sheet.costCents / count.value.perSheet < best.cost)
      best = { sheet, cost: sheet.costCents / count.value.perSheet };
  }
  if (best) return ok(best.sheet);
  return err(
    ...refusal.map((p) => ({ ...p, subject: `line ${line.id}`, message: `Line ${line.id}: ${p.message}` })),
  );
}

/** The sizes kept in the line's own material, gauge and colour; remnants only where nothing else is kept. */
function sheetsFor(shop: Shop, line: OrderLine): readonly Sheet[] {
  const all = shop.sheet.filter(
    (s) => s.materialId === line.materialId && s.gauge === line.gauge && s.colourId === line.colourId,
  );
  const bought = all.filter((s) => s.form !== 'remnant');
  return bought.length > 0 ? bought : all;
}

/** A coil as the sheet that is cut off it for one panel of such blanks, trim on its end included, at its price by the length. */
function cutFromCoil(coil: Sheet, blank: Blank): Sheet {
  const lengthMm = blank.lengthMm + coil.trimMm;
  return { ...coil, lengthMm, costCents: Math.round((coil.costCents * lengthMm) / coil.lengthMm) };
}
