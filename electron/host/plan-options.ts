import { parseArgs } from 'node:util';
import { readNumber } from '../../core/units/number.ts';
import { Refused } from '../refused.ts';
import type { SaidOfFile } from './order-answers.ts';

/** What can be asked on the command line. */

export const USAGE = `Usage: npm run plan -- --demo | --data FILE | --orders FILE [--data FILE]
  --demo          the demo shop with its three weeks of orders
  --data FILE     the shop of a data file
  --orders FILE   only the orders of a CSV, tab or XLSX file, made in the demo shop or in --data's
  --seconds N     how long to search (default 5)
  --seed N        where the search begins (default 1)
  --explain LINE  also why a line (1042/2) ends when it does in that plan, and what would help
  --rush FILE     instead of planning: three ways to fit a file's lines into the plan as it is
  --read-only     with --orders: plan nothing, say how the file's rows are understood
  --json          for programs, instead of text
  --help          this list

How a file of orders is read, where it leaves that open (it is asked then, and nothing is planned):
  --columns "order=Job No,length=Length (m)"
                  which column is which field; "length=" where the file has none;
                  a second note= goes to the note under its heading
  --every "material=galv"
                  what a field is in every row, where there is no column of it
  --dates dmy     the order of day, month and year: dmy, mdy or ymd
  --decimals comma
                  the mark before decimals: point or comma
  --units mm      the unit of lengths that name none: mm, cm, m, in or ft
                  (each of the last three for one field only: --dates "due=dmy")
  --same "RAL 7016=charcoal"
                  a text of the file, and which of the shop's parts, materials, gauges
                  or colours it is; once for each text
  --sheet NAME    of a spreadsheet: the sheet to read (default: the first)
  --accept-past   due dates that are past are meant so

The fields: order, line, customer, part, quantity, extra pieces, material, gauge, colour, length,
not before, due, importance, rush, note.`;

export interface Asked {
  readonly data?: string;
  readonly orders?: string;
  readonly seconds: number;
  readonly seed: number;
  readonly json: boolean;
  readonly explain?: string;
  readonly rush?: string;
  readonly readOnly: boolean;
  readonly said: SaidOfFile;
  readonly acceptPast: boolean;
}

const refuse = (message: string): never => {
  throw new Refused('bad-input', message);
};

/** @returns null: only the list was asked for. @throws Refused with a sentence, and the list where that helps */
export function readAsked(args: readonly string[]): Asked | null {
  const values = parsed(args);
  if (values.help) return null;
  const { data, orders, explain, rush, demo = false, json = false } = values;
  const readOnly = values['read-only'] ?? false;
  if (!demo && data === undefined && orders === undefined) refuse(`Say what to plan.\n\n${USAGE}`);
  if (demo && data !== undefined) refuse(`Choose one of --demo and --data.\n\n${USAGE}`);
  if (rush !== undefined && explain !== undefined) refuse(`Choose one of --explain and --rush.\n\n${USAGE}`);
  if (readOnly && orders === undefined)
    refuse('--read-only reads a file of orders: name it with --orders FILE.');
  if (readOnly && (rush ?? explain) !== undefined)
    refuse('--read-only plans nothing: leave --rush and --explain out, or --read-only.');
  const { columns = [], every = [], dates = [], decimals = [], units = [], same = [], sheet } = values;
  const said = { columns, every, dates, decimals, units, same, sheet };
  const acceptPast = values['accept-past'] ?? false;
  const ofFile = Object.keys(values).find((name) => OF_FILE.includes(name));
  if (ofFile !== undefined && orders === undefined && rush === undefined)
    refuse(`--${ofFile} says how a file of orders is read: name one with --orders FILE.`);
  const seconds = figure(values.seconds);
  if (!(seconds >= 0.1 && seconds <= 3600))
    refuse(`--seconds is “${values.seconds}”; write a number from 0.1 to 3600.`);
  const seed = figure(values.seed);
  if (!Number.isInteger(seed) || seed < 0 || seed > 2_147_483_647)
    refuse(`--seed is “${values.seed}”; write a whole number from 0.`);
  return { data, orders, seconds, seed, json, explain, rush, readOnly, said, acceptPast };
}

/** NaN: no number, or one that can be two. */
function figure(text: string): number {
  const read = readNumber(text, { decimals: 'point' });
  return read.ok ? read.value : NaN;
}

const TEXT = { type: 'string' } as const;
const FLAG = { type: 'boolean' } as const;
const TEXTS = { type: 'string', multiple: true } as const;
/** What says how a file of orders is read. */
const FILE_OPTIONS = {
  columns: TEXTS,
  every: TEXTS,
  dates: TEXTS,
  decimals: TEXTS,
  units: TEXTS,
  same: TEXTS,
  sheet: TEXT,
  'accept-past': FLAG,
} as const;
const OF_FILE = Object.keys(FILE_OPTIONS);

function parsed(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        demo: FLAG,
        data: TEXT,
        orders: TEXT,
        seconds: { ...TEXT, default: '5' },
        seed: { ...TEXT, default: '1' },
        json: FLAG,
        explain: TEXT,
        rush: TEXT,
        'read-only': FLAG,
        ...FILE_OPTIONS,
        help: FLAG,
      },
    }).values;
  } catch (error) {
    const words = error instanceof Error ? error.message : String(error);
    const unknown = /^Unknown option '(.+?)'/.exec(words)?.[1];
    return refuse(`${unknown === undefined ? words : `There is no option ${unknown}.`}\n\n${USAGE}`);
  }
}
