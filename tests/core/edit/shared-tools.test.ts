import { expect, it } from 'vitest';
import { applyCommand } from '../../../core/edit/apply.ts';
import type { Command } from '../../../core/edit/command.ts';
import { NO_HEMMING, TAKEN } from '../../../core/planning/set-up.ts';
import { withChanges } from '../../../core/shop/row-change.ts';
import type { Shop } from '../../../core/shop/state.ts';
import { aBrake, aLine, aPart, aShear, aShop } from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';
import { finish, start } from '../../support/floor-commands.ts';

const BRAKES = ['B1', 'B2'];
const hemmed = aPart({
  profile: { ...aPart().profile, startHem: { kind: 'closed', lengthMm: 12, direction: 'up' } },
});
const stands = { material: 'galv', gauge: '24', colour: 'moss', tools: 'V8-1 + P-1', hemming: 'H' };
const shop = aShop({
  part: [hemmed],
  machine: [
    aShear(),
    ...BRAKES.map((id) => aBrake({ id, name: id, tonnes: 200, state: id === 'B1' ? stands : null })),
  ],
  tool: [
    ...BRAKES.flatMap((id, k) => [
      aTool({ id: `V8-${k + 1}`, machineIds: [id] }),
      aTool({ id: `P-${k + 1}`, kind: 'punch', openingMm: null, machineIds: [id] }),
    ]),
    aTool({ id: 'H', kind: 'hemming', openingMm: null, angleDeg: null, machineIds: BRAKES }),
  ],
  line: [aLine({ partId: hemmed.id })],
});

const done = (before: Shop, ...commands: Command[]): Shop =>
  commands.reduce((now, command) => {
    const edit = applyCommand(now, command);
    if (!edit.ok) throw new Error(edit.issues.map((p) => p.message).join(' '));
    return withChanges(now, edit.value.changes);
  }, before);
const bentOn = (id: string): Shop =>
  done(
    shop,
    start('1042/1:shear', 'S1', '07:00'),
    finish('1042/1:shear', '07:40', 20),
    start('1042/1:brake', id, '07:45'),
    finish('1042/1:brake', '09:00', 20),
  );
const stateOf = ({ machine }: Shop, id: string) => machine.find((m) => m.id === id)?.state;

it('a brake that stood with shared tools has them no more when another was set up with them; its own stay', () => {
  const after = bentOn('B2');
  expect(stateOf(after, 'B2')).toMatchObject({ tools: 'V8-2 + P-2', hemming: 'H' });
  expect(stateOf(after, 'B1')).toEqual({ ...stands, hemming: TAKEN });
});

it('nothing is taken from it by work without those tools, or by its own', () => {
  expect(stateOf(bentOn('B1'), 'B1')).toMatchObject({ tools: 'V8-1 + P-1', hemming: 'H' });
  const open = { ...shop, part: [aPart({ id: hemmed.id })] };
  const after = done(
    open,
    start('1042/1:shear', 'S1', '07:00'),
    finish('1042/1:shear', '07:40', 20),
    start('1042/1:brake', 'B2', '07:45'),
    finish('1042/1:brake', '09:00', 20),
  );
  expect(stateOf(after, 'B2')).toMatchObject({ hemming: NO_HEMMING });
  expect(stateOf(after, 'B1')).toEqual(stands);
});
