import type { TwoPeopleBy } from '../estimate/estimate.ts';
import { standard, standardFigure, standardsOf } from '../estimate/standards.ts';
import type { ShopOperation } from '../planning/operations.ts';
import type { Machine } from '../shop/machine.ts';
import type { Units } from '../units/length.ts';

/** Why an operation asks for more than one person on a machine, in the machine's own figures; '' where one does it. */
export function whyPeople(
  machine: Machine,
  { machines, people }: Pick<ShopOperation, 'machines' | 'people'>,
  units: Units,
): string {
  if (people < 2) return '';
  const heavyBy = machines.find(({ id }) => id === machine.id)?.estimate.heavyBy ?? [];
  const lift = machine.stage === 'shear' ? 'the sheet' : 'the piece';
  const reasons = [
    ...(machine.crew > 1 ? [`${machine.name} has a crew of ${machine.crew}`] : []),
    ...heavyBy.map((by) => `${lift} ${limitWords(machine, by, units)}`),
  ];
  return reasons.length > 0 ? reasons.join('; ') : 'another machine that can do it asks for them';
}

function limitWords(machine: Machine, by: TwoPeopleBy, units: Units): string {
  const figure = (key: string): string =>
    standardFigure(
      standardsOf(machine).find((one) => one.key === key),
      standard(machine, key),
      units,
    );
  switch (by) {
    case 'weight':
      return `weighs more than ${figure('twoPersonKg')}`;
    case 'length':
      return `is flimsy (up to ${figure('flimsyMm')}) and ${figure('twoPersonMm')} long or longer`;
    case 'area':
      return `measures ${figure('twoPersonM2')} or more`;
  }
}
