import { gzipSync } from 'node:zlib';
import type { Reply } from '../../../core/contract/call.ts';
import { readCutProblem } from '../../../core/cutting/cut-problem.ts';
import { solveOneDimension } from '../../../core/cutting/one-dimension.ts';
import type { FileCheck } from '../../../core/import/file-check.ts';
import { buildProblem } from '../../../core/schedule/build.ts';
import { check } from '../../../core/schedule/check.ts';
import { improve } from '../../../core/schedule/improve.ts';
import { readShopProblem } from '../../../core/schedule/shop-problem.ts';
import type { Result } from '../../../core/result.ts';
import { added, sameContent, Watch, type Verdict } from './case.ts';
import { cutProblemFile, exportFile, finishedFile, ordersFile, shopProblemFile } from './files.ts';
import type { DoorHost } from './host.ts';
import { mutateBytes } from './mutate-bytes.ts';
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
  if (kind < 9) return tryTable(hosts.shop, 'import', ordersFile, draw);
  if (kind < 13) return tryTable(hosts.shop, 'import.finished', finishedFile, draw);
  if (kind < 16) return tryExport(hosts.fresh, draw);
  return tryProblem(hosts.shop, kind < 18, draw);
}

/** What a table's rows become when they are taken. */
const TAKEN = { import: ['order', 'line', 'step'], 'import.finished': ['record', 'fact'] };

/** A CSV file checked, now and then mended wrongly on screen, and taken. */
async function tryTable(
  host: DoorHost,
  door: keyof typeof TAKEN,
  file: string,
  draw: Draw,
): Promise<Verdict> {
  const watch = new Watch();
  const before = host.content();
  const base64 = Buffer.from(mutateBytes(file, draw)).toString('base64');
  const fileName = draw.chance(95) ? 'file.csv' : wildText(draw);
  const checked = await watch.asked(`${door}.check`, () => host.serve(`${door}.check`, { fileName, base64 }));
  if (!sameContent(before, host.content())) watch.blame('partial', 'a check changed the file');
  if (checked?.ok) {
    const found = checked.value as FileCheck;
    const table = { fileName, header: found.header, rows: found.rows };
    const mended = draw.chance(30);
    const asked = mended ? mutateValue(table, draw) : table;
    const taken = await watch.asked(`${door}.take`, () => host.serve(`${door}.take`, asked));
    judgeTaken(watch, host, before, door, taken, mended ? null : found.ready.length);
    if (taken?.ok) host.reset();
  }
  return watch.end(host);
}

/** All the rows that were ready are in, as one step; or nothing is. @param ready null: not known */
function judgeTaken(
  watch: Watch,
  host: DoorHost,
  before: ReturnType<DoorHost['content']>,
  door: keyof typeof TAKEN,
  taken: Reply<unknown> | null,
  ready: number | null,
): void {
  const after = host.content();
  if (!taken?.ok) {
    if (!sameContent(before, after)) watch.blame('partial', 'a refused import left something behind');
    return;
  }
  const { lines, operations, orders = 0 } = taken.value as Record<string, number | undefined>;
  const rows = lines ?? operations ?? 0;
  const wanted = rows === 0 ? [0, 0, 0] : door === 'import' ? [orders, rows, 1] : [rows, 1];
  const counts = added(before, after);
  const told = Object.fromEntries(TAKEN[door].map((table, k) => [table, wanted[k] ?? 0]));
  const right =
    counts !== null &&
    [...new Set([...Object.keys(counts), ...TAKEN[door]])].every(
      (table) => (counts[table] ?? 0) === (told[table] ?? 0),
    );
  if (!right) watch.blame('partial', `told ${JSON.stringify(told)}, kept ${JSON.stringify(counts)}`);
  if (ready !== null && ready !== rows)
    watch.blame('partial', `${ready} rows were ready, ${rows} were taken`);
}

/** A copy of everything, put into a fresh file. */
async function tryExport(host: DoorHost, draw: Draw): Promise<Verdict> {
  const watch = new Watch();
  const before = host.content();
  const text = draw.chance(60)
    ? JSON.stringify(mutateValue(JSON.parse(exportFile) as unknown, draw))
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
