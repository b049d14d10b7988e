import type { Command, FormRow } from '../edit/command.ts';
import { sheet, type Sheet } from '../material/material.ts';
import type { Machine } from '../shop/machine.ts';
import type { Shop } from '../shop/state.ts';
import { counted } from '../units/count.ts';
import { formatLength } from '../units/length.ts';

/** A shear that was told another trim than sheets have, and the two ways to settle it. */
export interface TrimOffer {
  readonly machineId: string;
  readonly message: string;
  /** The shear's figure for the sheets; null: no sheet can have so much. */
  readonly take: { readonly label: string; readonly command: Command } | null;
  /** The sheets' own figures stand. */
  readonly leave: { readonly label: string; readonly command: Command };
}

/** Sheets named in the sentence; the others are counted. */
const NAMED = 3;

/**
 * Trim is a figure of the sheet. Before, a shear could have one of its own: times went by that, cut lists by the sheet's.
 * Where the two agree nothing is said; where they do not, either is one press.
 */
export function trimOffers(shop: Shop): TrimOffer[] {
  return shop.machine.flatMap((machine): TrimOffer[] => {
    const toldMm = trimOnceTold(machine);
    // A remnant is cut from a trimmed sheet already.
    const others = shop.sheet.filter(({ form, trimMm }) => form !== 'remnant' && differs(trimMm, toldMm));
    return toldMm === 0 || others.length === 0 ? [] : [offerOf(shop, machine, toldMm, others)];
  });
}

/** What a shear was once told to take off each sheet, all cuts together. */
function trimOnceTold({ stage, standards }: Machine): number {
  const { trimCuts = 0, trimWidth = USUAL_TRIM_MM } = standards;
  return stage === 'shear' ? trimCuts * trimWidth : 0;
}

/** What a trim cut took where the shear had no width of its own, 1/4 in. */
const USUAL_TRIM_MM = 6.4;

/** 1/4 in entered here as 6.35 mm and there as 6.4 is one figure. */
const differs = (a: number, b: number): boolean => Math.abs(a - b) > 0.1;

function offerOf(shop: Shop, machine: Machine, toldMm: number, others: readonly Sheet[]): TrimOffer {
  const told = formatLength(toldMm, shop.settings);
  const named = others
    .slice(0, NAMED)
    .map(({ id, trimMm }) => `${id} (${formatLength(trimMm, shop.settings)})`);
  const more = others.length > NAMED ? ` and ${counted(others.length - NAMED, 'more', 'more')}` : '';
  const settled: FormRow = { kind: 'machine', row: { ...machine, standards: withoutTrim(machine) } };
  const sheets = others.map((row): FormRow => ({ kind: 'sheet', row: { ...row, trimMm: toldMm } }));
  const take = `Trim ${counted(others.length, 'sheet size')} by ${told}`;
  const leave = 'Keep the trim that the sheets have';
  return {
    machineId: machine.id,
    message: `${machine.name} was told that ${told} is trimmed off each sheet, and these sheets say otherwise: ${named.join(', ')}${more}. Times went by the shear, cut lists by the sheets; now both go by the sheets.`,
    take: sheet.shape.trimMm.safeParse(toldMm).success
      ? { label: take, command: { do: 'rows.save', rows: [...sheets, settled], label: take } }
      : null,
    leave: { label: leave, command: { do: 'rows.save', rows: [settled], label: leave } },
  };
}

const withoutTrim = ({ standards }: Machine): Machine['standards'] =>
  Object.fromEntries(Object.entries(standards).filter(([key]) => key !== 'trimCuts' && key !== 'trimWidth'));
