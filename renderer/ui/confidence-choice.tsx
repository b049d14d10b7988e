import { Select } from './choice.tsx';
import { storedChoice } from './stored-choice.ts';

/** How sure a promise is to be, in percent; kept in this window. */
const confidence = storedChoice('foldweek.sureness', ['50', '80', '90', '95'], '90');

/** The confidence chosen, above 0, below 1. */
export const useConfidence = (): number => Number(confidence.use()) / 100;

/** Chooses it, for every promise in this window. */
export const ConfidenceChoice = ({ label = 'How sure' }: { label?: string }) => (
  <Select
    label={label}
    options={confidence.choices.map((id) => ({ id, name: `${id} %` }))}
    value={confidence.use()}
    onChange={(id) => {
      const choice = confidence.choices.find((one) => one === id);
      if (choice) confidence.write(choice);
    }}
  />
);
