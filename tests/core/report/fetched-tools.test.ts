import { expect, it } from 'vitest';
import { toProblem } from '../../../core/planning/to-problem.ts';
import { dispatchLists } from '../../../core/report/dispatch.ts';
import { decode } from '../../../core/schedule/decode.ts';
import { instant } from '../../../core/units/brand.ts';
import { aBrake, aLine, aPart, aShear, aShop, NOW } from '../../support/builders.ts';
import { aTool } from '../../support/tool-builders.ts';
import { must } from '../schedule/hand-shop.ts';

it('the list says where a tool is fetched from, though the brake stands as the work asks', () => {
  const brakes = ['B1', 'B2'];
  const changeover = { combine: 'sum' as const, attributes: { hemming: 300 }, exceptions: [] };
  const shop = aShop({
    part: [
      aPart({
        profile: { ...aPart().profile, startHem: { kind: 'closed', lengthMm: 12, direction: 'up' } },
      }),
    ],
    machine: [
      aShear(),
      ...brakes.map((id, k) => aBrake({ id, name: `Brake ${k + 1}`, tonnes: 200, changeover })),
    ],
    tool: [
      ...brakes.flatMap((id) => [
        aTool({ id: `${id}-V8`, machineIds: [id] }),
        aTool({ id: `${id}-P`, kind: 'punch', openingMm: null, machineIds: [id] }),
      ]),
      aTool({
        id: 'H',
        name: 'Hemming tools, 10 ft',
        kind: 'hemming',
        openingMm: null,
        angleDeg: null,
        machineIds: brakes,
      }),
    ],
    line: [1, 2, 3].map((number) => aLine({ number })),
  });
  const { problem, operations, queues } = must(toProblem(shop, NOW));
  const drawn = { ...queues, B1: ['1042/1:brake', '1042/3:brake'], B2: ['1042/2:brake'] };
  const schedule = must(decode(problem, drawn));
  const lists = dispatchLists(shop, { schedule, operations }, NOW, instant(NOW + 7 * 86_400));
  const runs = lists.find(({ machine }) => machine.id === 'B1')!.runs;
  expect(runs.map((run) => run.rows.map(({ operationId }) => operationId))).toEqual([
    ['1042/1:brake'],
    ['1042/3:brake'],
  ]);
  expect(runs[1]!.changeover).toMatchObject({
    seconds: 300,
    steps: [{ attribute: 'hemming', from: 'on Brake 2', to: 'Hemming tools, 10 ft' }],
  });
});
