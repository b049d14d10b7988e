import { gzipSync } from 'node:zlib';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { tryFile, type Hosts } from '../support/doors/file-case.ts';
import { exportFile } from '../support/doors/files.ts';
import { openDoorHost } from '../support/doors/host.ts';
import { tryRequest } from '../support/doors/request-case.ts';
import { anEverythingShop } from '../support/everything-shop.ts';
import { tempFolder } from './support.ts';

/** Some of what `npm run bench -- doors` tries by the ten thousand. */

async function hosts(): Promise<Hosts> {
  const folder = tempFolder();
  for (const name of ['shop', 'fresh']) mkdirSync(join(folder, name));
  const shop = await openDoorHost(join(folder, 'shop'), anEverythingShop());
  const fresh = await openDoorHost(join(folder, 'fresh'), null);
  onTestFinished(async () => {
    await shop.close();
    await fresh.close();
  });
  return { shop, fresh };
}

describe('the doors of a host', () => {
  it.each([
    ['broken files', tryFile, 250],
    ['malformed requests', tryRequest, 300],
  ])(
    'stand %s: the host still answers, and its file holds all of what was taken or nothing',
    async (_what, attempt, count) => {
      const both = await hosts();
      let accepted = 0;
      for (let seed = 1; seed <= count; seed++) {
        const verdict = await attempt(both, seed);
        // How long it takes is the bench's business: here others may keep the machine busy.
        if (verdict.fault !== 'hung') expect(verdict.fault, `case ${seed}: ${verdict.what}`).toBeNull();
        if (verdict.accepted) accepted += 1;
      }
      expect(accepted).toBeGreaterThan(count / 20);
    },
    120_000,
  );

  it('refuse an export in which a row stands twice, naming it', async () => {
    const { fresh } = await hosts();
    const whole = JSON.parse(exportFile) as { tables: { pin: unknown[] } };
    whole.tables.pin.push(whole.tables.pin[0]);
    const gzipBase64 = gzipSync(JSON.stringify(whole)).toString('base64');
    const reply = await fresh.serve('app.begin', { with: 'export', fileName: 'everything.json', gzipBase64 });
    expect(reply).toMatchObject({
      ok: false,
      error: {
        message:
          'everything.json cannot be read: pin, row 2, id: it is there twice. Nothing was taken from it.',
      },
    });
  });
});
