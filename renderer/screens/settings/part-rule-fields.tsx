import { RULES, ruleName, verdict, type RuleName, type Verdict } from '../../../core/part/rules.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { Select } from '../../ui/choice.tsx';
import { Group } from '../../form/form-frame.tsx';
import { withoutKey } from '../../form/list.ts';
import type { Form } from '../../form/use-form.ts';
import styles from './settings.module.css';

const USUAL = 'usual';

/** The usual verdict first, then the other two. */
function choicesOf(rule: RuleName) {
  const { verdict: usual } = RULES[rule];
  const others = verdict.options.filter((one) => one !== usual);
  return [{ id: USUAL, name: `usual: ${usual}` }, ...others.map((one) => ({ id: one, name: one }))];
}

/** What the shop makes of each rule about a part on a machine. */
export function PartRuleFields({ form: { entries, set } }: { form: Form<Settings> }) {
  const { partRules } = entries;
  const change = (rule: RuleName, choice: string) =>
    set({
      partRules: choice === USUAL ? withoutKey(partRules, rule) : { ...partRules, [rule]: choice as Verdict },
    });
  return (
    <Group
      title="Rules about parts on machines"
      note="A stop keeps a line off that machine and says why; a warning only shows. Switching a rule off changes no machine: its maker’s manual and plate, local codes and your employer’s procedure still decide."
    >
      <ul className={styles.rules}>
        {ruleName.options.map((rule) => (
          <li key={rule}>
            <Select
              label={rule.charAt(0).toUpperCase() + rule.slice(1)}
              options={choicesOf(rule)}
              value={partRules[rule] ?? USUAL}
              onChange={(choice) => change(rule, choice)}
            />
            <p>
              {RULES[rule].says}
              <br />
              <span className={styles.note}>Basis: {RULES[rule].source}.</span>
            </p>
          </li>
        ))}
      </ul>
    </Group>
  );
}
