import { Select } from './choice.tsx';
import { storedChoice } from './stored-choice.ts';

/** How sure a promise is to be, in percent; kept in this window. */
const sureness = storedChoice('foldweek.sureness', ['50', '80', '90', '95'], '90');

/** The confidence chosen, above 0, below 1. */
export const useSureness = (): number => Number(sureness.use()) / 100;

/** Chooses it, for every promise in this window. */
export const HowSure = ({ label = 'How sure' }: { label?: string }) => (
  <Select
    label={label}
    options={sureness.choices.map((id) => ({ id, name: `${id} %` }))}
    value={sureness.use()}
    onChange={(id) => {
      const choice = sureness.choices.find((one) => one === id);
      if (choice) sureness.write(choice);
    }}
  />
);
