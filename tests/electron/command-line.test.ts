import { statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { aShop } from '../support/builders.ts';
import { plan } from './plan-command.ts';
import { storeWith, tempFolder } from './support.ts';

const CSV =
  'order,customer,part,quantity,material,gauge,colour,due\n7001,Sheds,sill,40,galv,24,moss,2026-12-04\n7002,Barns,sill,10,galv,26,moss,2026-12-03\n';

describe('the command line', () => {
  it('plans the demo shop and compares it with due-date order', () => {
    const { status, stdout, stderr } = plan('--demo', '--seconds', '0.5');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Thrushwick Trim: plan from Mon 30 Nov 06:00 \(America\/Chicago\)/);
    expect(stdout).toMatch(/^S1 {2}.*: \d+ operations in \d+ runs$/m);
    expect(stdout.match(/^(S1|B1|B2) /gm)).toEqual(['S1 ', 'B1 ', 'B2 ']);
    expect(stdout).toMatch(/^ {2}Mon 30 Nov \d\d:\d\d.*× \d+, .* in .*ga /m);
    expect(stdout).toMatch(/^Late lines +\d+ of \d+ +\d+ of \d+$/m);
    expect(stdout).toMatch(/^Hours late +.*\n {2}already overdue when planned +.*\n {2}the rest +/m);
    expect(stdout).toMatch(/Local codes, the machine maker’s manual/);
  });

  it('gives programs one JSON value, and the plan in it is no worse than due-date order', () => {
    const { stdout } = plan('--demo', '--seconds', '0.5', '--json');
    const report = JSON.parse(stdout);
    expect(report.machines.map((m: { id: string }) => m.id)).toEqual(['B1', 'B2', 'S1']);
    expect(report.machines.every((m: { queue: unknown[] }) => m.queue.length > 0)).toBe(true);
    expect(report.figures.weightedTardiness).toBeLessThan(report.dueDateOrder.weightedTardiness);
  });

  it('plans the shop of a data file', () => {
    const file = join(tempFolder(), 'shop.db');
    storeWith(aShop(), file).close();
    const { status, stdout } = plan('--data', file, '--seconds', '0.2');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Test shop: plan from/);
    expect(stdout).toMatch(/1043\/1 .*Corner × 35/);
  });

  it('plans a file of orders alone', () => {
    const file = join(tempFolder(), 'orders.csv');
    writeFileSync(file, CSV);
    const { status, stdout } = plan('--orders', file, '--seconds', '0.2');
    expect(status).toBe(0);
    expect(stdout).toMatch(/7001\/1/);
    expect(stdout).toMatch(/^Late lines +0 of 2/m);
  });

  it('explains a line of the demo shop: causes with minutes that add up, and changes with their cost', () => {
    const { status, stdout, stderr } = plan('--demo', '--seconds', '0.5', '--explain', '4142/1');
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Why (late|not sooner)\? 4142\/1 ends \w{3} \d+ Dec \d\d:\d\d, /m);
    expect(stdout).toMatch(/^From Mon 30 Nov 06:00 to its end: \d+ h/m);
    expect(stdout).toMatch(/^ +\d+ h.* {2}Its work order says not before Mon 7 Dec 06:30$/m);
    const { why, words } = JSON.parse(
      plan('--demo', '--seconds', '0.5', '--explain', '4102/2', '--json').stdout,
    );
    expect(why.causes.reduce((sum: number, cause: { seconds: number }) => sum + cause.seconds, 0)).toBe(
      why.end - why.causes[0].from,
    );
    expect(words[0]).toMatch(/^Why late\? 4102\/2 ends /);
    expect(words.join('\n')).toMatch(/^(No single change|One single change|Single changes) /m);
  });

  it('explains a line of a file of orders, named by its order when that has one line', () => {
    const file = join(tempFolder(), 'orders.csv');
    writeFileSync(file, CSV);
    const { status, stdout } = plan('--orders', file, '--seconds', '0.2', '--explain', '7001');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Why not sooner\? 7001\/1 ends .* before it is due/m);
    expect(stdout).toMatch(/^ +\d+.*Bending on /m);
  });

  it.each([
    ['9999/1', /there is no line 9999\/1 among the lines to be planned\. Name an open one/],
    ['4142', /4142 has the lines 4142\/1, 4142\/2.*; name one of them/],
  ])('ends in failure with a sentence when it cannot explain %s', (line, sentence) => {
    const { status, stdout, stderr } = plan('--demo', '--seconds', '0.2', '--explain', line);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(sentence);
    expect(stderr).not.toMatch(/ {4}at /);
  });

  it('lists what can be asked', () => {
    const { status, stdout } = plan('--help');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Usage: .*--demo[\s\S]*--explain LINE[\s\S]*--help/);
  });

  it.each([
    ['a wrong cell', CSV.replace('40', '-40'), /row 2, quantity: The quantity must be at least 1, not -40/],
    ['no orders', 'order,customer,part,quantity,gauge,colour,due\n', /has a header but no orders/],
    ['nothing in it', '', /is empty/],
  ])('ends in failure with a sentence on a file with %s', (_what, text, sentence) => {
    const file = join(tempFolder(), 'orders.csv');
    writeFileSync(file, text);
    const { status, stdout, stderr } = plan('--orders', file);
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toMatch(sentence);
    expect(stderr).not.toMatch(/ {4}at /);
  });

  it.each([
    [['--orders', 'missing.csv'], /There is no file missing.csv/],
    [['--orders', '.'], /The file \. cannot be read .*Name a CSV file/],
    [['--data', 'missing.db'], /There is no data file missing.db/],
    [['--demo', '--seconds', 'soon'], /--seconds is “soon”/],
    [['--demo', '--seed', '-1'], /--seed/],
    [['--demo', '--data', 'x.db'], /Choose one/],
    [['--wrong'], /^There is no option --wrong\.\n\nUsage:[\s\S]*--columns/],
    [[], /Say what to plan/],
  ])('ends in failure with a sentence when asked %j', (args, sentence) => {
    const { status, stderr } = plan(...args);
    expect(status).toBe(1);
    expect(stderr).toMatch(sentence);
    expect(stderr).not.toMatch(/ {4}at /);
  });

  it('gives three ways to take the lines of a file into the plan, in the words of the app', () => {
    const file = join(tempFolder(), 'rush.csv');
    writeFileSync(file, CSV.replaceAll('sill', 'ridge-cap'));
    const { status, stdout, stderr } = plan('--demo', '--seconds', '0.5', '--rush', file);
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toMatch(/^rush.csv, its columns named in row 1:$/m);
    expect(stdout).toMatch(/^Thrushwick Trim: rush of 2 lines, fitted in at Mon 30 Nov 06:00/m);
    expect(
      stdout.match(/^[123] {2}.*$/gm)?.map((line) => line.replace(/( {2}\((advised|costs least)\))+$/, '')),
    ).toEqual(['1  Front of the queue', '2  Into the matching run', '3  Plan again around it']);
    expect(stdout.match(/^ {3}Ready .*, (on time|.* late)\.$/gm)).toHaveLength(3);
    expect(stdout).toMatch(/\(costs least\)/);
    expect(stdout).toMatch(/Local codes, the machine maker’s manual/);
  });

  it('gives programs the same ways as one JSON value, the third no dearer than the others', () => {
    const file = join(tempFolder(), 'rush.csv');
    writeFileSync(file, CSV);
    const orders = join(tempFolder(), 'orders.csv');
    writeFileSync(orders, CSV.replaceAll('700', '800'));
    const { stdout } = plan('--orders', orders, '--rush', file, '--seconds', '0.2', '--json');
    const { lineIds, ways } = JSON.parse(stdout);
    expect(lineIds).toEqual(['7001/1', '7002/1']);
    const costs = ways.map((way: { objectiveAdded: number }) => way.objectiveAdded);
    expect(costs[2]).toBeLessThanOrEqual(Math.min(costs[0], costs[1]) + 1e-6);
  });

  it('ends in failure with a sentence on a rush with a wrong cell, or with nothing new', () => {
    const file = join(tempFolder(), 'rush.csv');
    writeFileSync(file, CSV.replace('40', '-40'));
    const wrong = plan('--demo', '--rush', file);
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toMatch(/row 2, quantity: The quantity must be at least 1, not -40/);
    writeFileSync(file, CSV);
    const again = plan('--orders', file, '--rush', file);
    expect(again.status).toBe(1);
    expect(again.stderr).toMatch(/Every line of rush.csv already exists in the shop/);
    expect(plan('--demo', '--rush', 'missing.csv').stderr).toMatch(/There is no file missing.csv/);
  });

  it('leaves an empty data file empty and says what to do', () => {
    const file = join(tempFolder(), 'shop.db');
    writeFileSync(file, '');
    const { status, stderr } = plan('--data', file);
    expect(status).toBe(1);
    expect(stderr).toMatch(/is empty. Start a shop in it/);
    expect(statSync(file).size).toBe(0);
  });

  it('leaves a damaged data file alone and says so', () => {
    const file = join(tempFolder(), 'shop.db');
    writeFileSync(file, 'not a database at all, but long enough');
    const { status, stderr } = plan('--data', file);
    expect(status).toBe(1);
    expect(stderr).toMatch(/is damaged and was left as it is/);
  });
});
