import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { listShop } from '../support/list-shop.ts';
import { plan } from './plan-command.ts';
import { storeWith, tempFolder } from './support.ts';

const lists = join(import.meta.dirname, '..', 'fixtures', 'import');

/** What the maker of a list says of it, whatever we read. */
interface Truth {
  readonly same: Readonly<Record<string, Readonly<Record<string, string>>>>;
  readonly rows: readonly {
    readonly row: number;
    readonly means?: Readonly<Record<string, string | number>>;
    readonly wrong?: unknown;
  }[];
}

const truthOf = (name: string): Truth =>
  JSON.parse(readFileSync(join(lists, name.replace(/\.\w+$/, '.truth.json')), 'utf8')) as Truth;

/** The data file of the shop that the lists are sent to. */
function dataFile(): string {
  const file = join(tempFolder(), 'shop.db');
  storeWith(listShop(), file).close();
  return file;
}

function fileOf(name: string, text: string): string {
  const file = join(tempFolder(), name);
  writeFileSync(file, text);
  return file;
}

const rowsIn = (stdout: string) => JSON.parse(stdout) as Record<string, string | number | null>[];

describe.each([
  ['auftraege.csv', []],
  ['work-orders.xlsx', ['--columns', 'note=Delivery instructions']],
  ['jobs.txt', []],
])('%s', (name, more) => {
  const file = join(lists, name);

  it('ends with what the shop cannot know, each with the option that answers it', () => {
    const { status, stdout, stderr } = plan('--data', dataFile(), '--orders', file);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    const asked = Object.entries(truthOf(name).same).flatMap(([what, texts]) =>
      Object.keys(texts).map((text) => ({ what, text })),
    );
    expect(stderr).toMatch(/nothing was planned/);
    for (const { what, text } of asked) {
      expect(stderr).toContain(`The shop has no ${what} “${text}”. Which of its own is it?`);
      expect(stderr).toContain(`--same "${text}=`);
    }
    expect(stderr.match(/Which of its own is it\?/g)).toHaveLength(asked.length);
  });

  it('is read as it was meant once that is answered, its wrong rows named with their numbers', () => {
    const truth = truthOf(name);
    const same = Object.values(truth.same).flatMap((texts) =>
      Object.entries(texts).flatMap(([text, is]) => ['--same', `${text}=${is}`]),
    );
    const asked = ['--orders', file, ...more, ...same, '--read-only', '--json'];
    const { status, stdout, stderr } = plan('--data', dataFile(), ...asked);
    expect(status).toBe(1);
    const read = rowsIn(stdout).map(({ line: _line, material, release, importance, ...row }) => {
      expect({ material, release, importance }).toEqual({
        material: 'galv',
        release: null,
        importance: null,
      });
      return { ...row, note: row.note ?? '', due: String(row.due).replace(/T17:00$/, '') };
    });
    expect(read).toEqual(truth.rows.flatMap(({ means }) => (means ? [means] : [])));
    const left = stderr.slice(stderr.indexOf('wrong rows, left out:'));
    expect(new Set([...left.matchAll(/^ {2}row (\d+), /gm)].map(([, row]) => Number(row)))).toEqual(
      new Set(truth.rows.flatMap(({ row, wrong }) => (wrong ? [row] : []))),
    );
  });
});

const GERMAN = [
  'Auftrags-Nr.;Kunde;Profil;Menge;Werkstoff;Dicke;Farbe;Länge (m);Frühestens;Liefertermin;Bemerkung',
  '8101;Gaube & Kehle;sill;1.200;galv;24;RAL 7016;1,25;14.12.2026;24.12.2026 14:00;Tor 3',
  '8101;;head;4;galv;26;moss;;;24.12.2026;',
].join('\n');

describe('a file of orders', () => {
  it('with semicolons, German headings and decimal commas is understood in millimetres, pieces and wall-clock dates', () => {
    const file = fileOf('auftraege.csv', GERMAN);
    const { status, stdout, stderr } = plan(
      ...['--orders', file, '--same', 'RAL 7016=Charcoal', '--read-only', '--json'],
    );
    expect(status).toBe(0);
    expect(rowsIn(stdout)).toEqual([
      {
        order: '8101',
        line: null,
        customer: 'Gaube & Kehle',
        part: 'sill',
        quantity: 1200,
        material: 'galv',
        gauge: '24',
        colour: 'charcoal',
        lengthMm: 1250,
        release: '2026-12-14T00:00',
        due: '2026-12-24T14:00',
        importance: null,
        note: 'Tor 3',
      },
      {
        order: '8101',
        line: null,
        customer: 'Gaube & Kehle',
        part: 'head',
        quantity: 4,
        material: 'galv',
        gauge: '26',
        colour: 'moss',
        lengthMm: null,
        release: null,
        due: '2026-12-24T17:00',
        importance: null,
        note: null,
      },
    ]);
    expect(stderr).toMatch(/^ {2}Länge \(m\) +→ length, in metres \(as its heading says\)/m);
    expect(stderr).toMatch(/^ {2}Liefertermin +→ due/m);
  });

  it('says above its plan how each column was read, and what was not used', () => {
    const file = fileOf(
      'jobs.csv',
      'Job No,Customer,Part,Qty,Material,Ga,Color,Price,Due\n8201,Sheds,sill,40,galv,24,moss,9.5,2026-12-04',
    );
    const { status, stdout } = plan('--orders', file, '--seconds', '0.2');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^ {2}Job No +→ order$/m);
    expect(stdout).toMatch(/^ {2}Columns not used: “Price”\.$/m);
    expect(stdout).toMatch(/8201\/1 /);
  });

  const OPEN =
    'Auftrag;Kunde;Teil;Stück;Werkstoff;Dicke;Farbe;Länge (mm);Termin\n8301;Gaube;sill;4;galv;24;moss;1.250;04.12.2026\n';

  it('that can mean two numbers or two days ends with both, and with the options that choose', () => {
    const { status, stdout, stderr } = plan('--orders', fileOf('offen.csv', OPEN), '--seconds', '0.2');
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(/“1\.250” can be 1250 mm or 1\.25 mm/);
    expect(stderr).toMatch(
      /--decimals comma \(then it is 1250 mm\), or --decimals point \(then it is 1\.25 mm\)/,
    );
    expect(stderr).toMatch(/“04\.12\.2026” can be .*4 Dec 2026 or .*12 Apr 2026/);
    expect(stderr).toMatch(/--dates dmy \(then it is .*4 Dec 2026\), or --dates mdy/);
  });

  it.each([
    ['comma', 'dmy', { lengthMm: 1250, due: '2026-12-04T17:00' }],
    ['point', 'mdy', { lengthMm: 1.25, due: '2026-04-12T17:00' }],
    ['length=comma', 'due=dmy', { lengthMm: 1250, due: '2026-12-04T17:00' }],
  ])('is read as --decimals %s and --dates %s say', (decimals, dates, read) => {
    const file = fileOf('offen.csv', OPEN);
    const { stdout } = plan(
      ...['--orders', file, '--decimals', decimals, '--dates', dates, '--read-only', '--json'],
    );
    expect(rowsIn(stdout)).toMatchObject([read]);
  });

  it('with headings that nobody knows is read as --columns, --every and --units say', () => {
    const file = fileOf(
      'x.csv',
      'A;B;C;D;E;F;G;H;I\n8401;Sheds;sill;4;24;moss;2440;2026-12-04;at the gate\n',
    );
    const columns = 'order=A,customer=B,part=C,quantity=D,gauge=E,colour=F,length=G,due=H,note=I';
    const { status, stdout } = plan(
      ...['--orders', file, '--columns', columns, '--every', 'material=galv', '--units', 'mm'],
      ...['--read-only', '--json'],
    );
    expect(status).toBe(0);
    expect(rowsIn(stdout)).toMatchObject([
      { order: '8401', material: 'galv', lengthMm: 2440, note: 'at the gate' },
    ]);
  });

  it('with bare fractions asks a shop that counts in millimetres for their unit', () => {
    const data = join(tempFolder(), 'shop.db');
    const shop = listShop();
    storeWith({ ...shop, settings: { ...shop.settings, units: 'mm' } }, data).close();
    const file = fileOf(
      'bruchteile.csv',
      'order,customer,part,quantity,gauge,colour,length,due\n8601,Sheds,P-101,4,24,green,96 1/2,2026-12-04\n',
    );
    const asked = plan('--data', data, '--orders', file);
    expect(asked.status).toBe(1);
    expect(asked.stderr).not.toMatch(/shop’s own/);
    expect(asked.stderr).toMatch(
      /--units mm \(then it is 96 1\/2 mm\), or --units in \(then it is 96 1\/2 in\)/,
    );
    const read = plan(...['--data', data, '--orders', file, '--units', 'in', '--read-only', '--json']);
    expect(rowsIn(read.stdout)).toMatchObject([{ lengthMm: 2451.1 }]);
  });

  it('with a due date that is past is understood, said, and planned only where that is meant', () => {
    const file = fileOf(
      'past.csv',
      `order,customer,part,quantity,material,gauge,colour,due\n8501,Sheds,sill,4,galv,24,moss,2026-11-20\n`,
    );
    const read = plan('--orders', file, '--read-only', '--json');
    expect(read.status).toBe(0);
    expect(rowsIn(read.stdout)).toMatchObject([{ due: '2026-11-20T17:00' }]);
    expect(read.stderr).toMatch(/row 2, due: The due date .* is past/);
    const planned = plan('--orders', file, '--seconds', '0.2');
    expect(planned.status).toBe(1);
    expect(planned.stderr).toMatch(/add --accept-past/);
    expect(plan('--orders', file, '--accept-past', '--seconds', '0.2').stdout).toMatch(/LATE by/);
  });

  it.each([
    [['--columns', 'length=Nope'], /--columns: offen\.csv has no column “Nope”.* “Länge \(mm\)”/],
    [['--columns', 'weightless=Länge'], /there is no field “weightless”\. The fields are order, line/],
    [['--columns', 'order=Auftrag', '--columns', 'order=Kunde'], /the order can only be one column/],
    [['--columns', 'order'], /write it like --columns "order=Job No,length=Length \(m\)"/],
    [['--dates', 'soon'], /--dates is “soon”; write dmy, mdy or ymd/],
    [['--decimals', 'dot'], /--decimals is “dot”; write point or comma/],
    [['--units', 'furlongs'], /--units is “furlongs”; write mm, cm, m, in or ft/],
    [['--same', 'RAL 7016'], /write it like --same "RAL 7016=charcoal"/],
    [['--same', 'RAL 7016=graphite'], /the shop has no part, material, gauge or colour “graphite”/],
    [['--same', 'moss=charcoal'], /“moss” is a colour of the shop already/],
    [['--rush', 'x.csv', '--read-only'], /--read-only plans nothing/],
  ])('is not read where the options are wrong: %j', (options, sentence) => {
    const { status, stdout, stderr } = plan('--orders', fileOf('offen.csv', OPEN), ...options);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(sentence);
    expect(stderr).not.toMatch(/ {4}at /);
  });

  it.each([
    [['--read-only'], /Say what to plan/],
    [['--demo', '--read-only'], /--read-only reads a file of orders/],
    [['--demo', '--dates', 'dmy'], /--dates says how a file of orders is read: name one with --orders/],
  ])('has to be named for the options about files: %j', (options, sentence) => {
    const { status, stderr } = plan(...options);
    expect(status).toBe(1);
    expect(stderr).toMatch(sentence);
  });
});
