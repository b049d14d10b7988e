import { gzipSync } from 'node:zlib';
import type { Reply } from '../../../core/contract/call.ts';
import { readCutProblem } from '../../../core/cutting/cut-problem.ts';
import { solveOneDimension } from '../../../core/cutting/one-dimension.ts';
import type { OutputOf } from '../../../core/contract/call.ts';
import type { contract } from '../../../core/contract/index.ts';
import type { Reading } from '../../../core/import/reading.ts';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import { readShopProblem } from '../../../core/schedule/shop-problem.ts';
import type { Result } from '../../../core/result.ts';
import { sameContent, Watch, type Verdict } from './case.ts';
import type { ImportKindName } from '../../../core/import/kinds.ts';
import { cutProblemFile, exportFile, fileAnswers, shopProblemFile } from './files.ts';
import type { DoorHost } from './host.ts';
import { tableFiles, tableKinds } from './list-files.ts';
import { mutateBytes } from './mutate-bytes.ts';
import { mutateSpreadsheet, spreadsheetOf } from './mutate-spreadsheet.ts';
import { mutateValue } from './mutate-value.ts';
import { Draw, nested, wildText } from './wild.ts';

export interface Hosts {
  /** With a shop. */
  readonly shop: DoorHost;
  /** With a file that no shop was begun in. */
  readonly fresh: DoorHost;
}

/** One file of the kind that the draw gives, broken as it says. */
export function tryFile(hosts: Hosts, seed: number): Promise<Verdict> {
  const draw = new Draw(seed);
  const kind = draw.below(20);
  if (kind < 6) return tryTable(hosts.shop, 'orders', draw);
  if (kind < 13) return tryTable(hosts.shop, draw.of(tableKinds), draw);
  if (kind < 16) return tryExport(hosts.fresh, draw);
  return tryProblem(hosts.shop, kind < 18, draw);
}

/** A table's file read, now and then with wild answers, and taken. */
async function tryTable(host: DoorHost, kind: ImportKindName, draw: Draw): Promise<Verdict> {
  const file = tableFiles[kind].text;
  const watch = new Watch();
  const before = host.content();
  const bytes = draw.chance(25)
    ? mutateSpreadsheet(await spreadsheetOf(file), draw)
    : mutateBytes(file, draw);
  const base64 = Buffer.from(bytes).toString('base64');
  const fileName = draw.chance(95) ? 'file.csv' : wildText(draw);
  const plain = { kind, fileName, base64, answers: {} };
  const read = await watch.asked('import.read', () => host.serve('import.read', plain));
  if (!sameContent(before, host.content())) watch.blame('partial', 'reading changed the file');
  if (read?.ok) {
    const { counts } = read.value as Reading;
    const asked = draw.chance(30) ? { ...plain, answers: mutateValue(fileAnswers, draw) } : plain;
    const taken = await watch.asked('import.take', () => host.serve('import.take', asked));
    judgeTaken(watch, host, before, kind, taken, asked === plain ? counts.new + counts.changed : null);
    if (taken?.ok) host.reset();
  }
  return watch.end(host);
}

/** All the rows that could be taken are in, as one step; or nothing is. @param ready null: not known */
function judgeTaken(
  watch: Watch,
  host: DoorHost,
  before: ReturnType<DoorHost['content']>,
  kind: ImportKindName,
  taken: Reply<unknown> | null,
  ready: number | null,
): void {
  const after = host.content();
  if (!taken?.ok) {
    if (!sameContent(before, after)) watch.blame('partial', 'a refused import left something behind');
    return;
  }
  const { counts, stepId, factId } = taken.value as OutputOf<typeof contract.importTake>;
  const rows = counts.new + counts.changed;
  const grown = grownOf(before, after);
  const { table, history } = tableFiles[kind];
  const entries = grown(history);
  // A count of stock is an entry of its own.
  const told = kind === 'stock' ? rows : counts.new;
  if (table !== null && grown(table) !== told)
    watch.blame('partial', `told ${told} new, kept ${grown(table)}`);
  if (entries !== (rows > 0 ? 1 : 0) || rows > 0 !== ((stepId ?? factId) !== null))
    watch.blame('partial', `${rows} rows became ${entries} entries of the history`);
  if (ready !== null && ready !== rows)
    watch.blame('partial', `${ready} rows were ready, ${rows} were taken`);
}

const grownOf =
  (before: ReturnType<DoorHost['content']>, after: ReturnType<DoorHost['content']>) =>
  (table: string): number =>
    (after[table]?.length ?? 0) - (before[table]?.length ?? 0);

/** A copy of everything, put into a fresh file. */
async function tryExport(host: DoorHost, draw: Draw): Promise<Verdict> {
  const watch = new Watch();
  const before = host.content();
  const text = draw.chance(60)
    ? (JSON.stringify(mutateValue(JSON.parse(exportFile) as unknown, draw)) ?? '')
    : Buffer.from(mutateBytes(exportFile, draw));
  const packed = gzipSync(draw.chance(3) ? bomb(draw) : text);
  const bytes = draw.chance(10) ? packed.subarray(0, draw.below(packed.length)) : packed;
  const input = { with: 'export', fileName: 'everything.json', gzipBase64: bytes.toString('base64') };
  const begun = await watch.asked('app.begin', () => host.serve('app.begin', input));
  const after = host.content();
  if (begun?.ok) {
    const { tables } = JSON.parse(String(text)) as { tables: Record<string, unknown[]> };
    for (const [table, rows] of Object.entries(tables))
      if (after[table]?.length !== rows.length) watch.blame('partial', `not all rows of ${table} are in`);
    host.reset();
  } else if (!sameContent(before, after)) watch.blame('partial', 'a refused export left something behind');
  return watch.end(host);
}

/** Small when packed, large or deep when not. */
const bomb = (draw: Draw): string =>
  draw.chance(50) ? ' '.repeat(20_000_000) : JSON.stringify(nested(3000, draw.chance(50)));

/** A problem file, read, and worked on for a moment where it can be. */
async function tryProblem(host: DoorHost, shop: boolean, draw: Draw): Promise<Verdict> {
  const watch = new Watch();
  const file = shop ? shopProblemFile : cutProblemFile;
  const text = draw.chance(70)
    ? JSON.stringify(mutateValue(JSON.parse(file) as unknown, draw))
    : Buffer.from(mutateBytes(file, draw)).toString('utf8');
  let raw: unknown;
  try {
    raw = JSON.parse(text);
  } catch {
    return watch.end(host);
  }
  await watch.timed(shop ? 'shop-problem/1' : 'cut-problem/1', () =>
    shop ? workOnShop(watch, raw) : workOnCut(watch, raw),
  );
  return watch.end(host);
}

function workOnShop(watch: Watch, raw: unknown): void {
  const read = told(watch, readShopProblem(raw));
  const problem = read && told(watch, buildProblem(read.input));
  if (!problem) return;
  const found = improve(problem, { seed: 1 }).next();
  if (found.done) return;
  const { schedule, objective } = found.value;
  if (!Number.isFinite(objective)) watch.blame('crashed', `the objective is ${objective}`);
  const [violation] = check(problem, schedule);
  if (violation) watch.blame('crashed', `the plan breaks a rule: ${violation.message}`);
}

function workOnCut(watch: Watch, raw: unknown): void {
  const problem = told(watch, readCutProblem(raw));
  if (!problem) return;
  const { value } = solveOneDimension(problem, {}).next();
  if (value?.result && !Number.isFinite(value.result.objective))
    watch.blame('crashed', 'the objective is no number');
}

function told<T>(watch: Watch, result: Result<T>): T | null {
  if (result.ok) return result.value;
  for (const { message, advice } of result.issues.slice(0, 3))
    if (message === '' || advice === '') watch.blame('crashed', 'a refusal says nothing');
  watch.note(result.issues[0]?.message ?? '');
  return null;
}
