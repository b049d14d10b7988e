import { USUAL_EXTRA_BLANKS, type ExtraBlanks } from '../../../core/part/extra-blanks.ts';
import type { Settings } from '../../../core/shop/settings.ts';
import { ExtraBlankFields, percentOf } from '../../form/extra-blank-fields.tsx';
import { Group } from '../../form/form-frame.tsx';
import formStyles from '../../form/form.module.css';
import type { Form } from '../../form/use-form.ts';
import { useShop } from '../../queries/hooks.ts';
import { useWouldDo } from '../../queries/would-do.ts';
import { Button } from '../../ui/button.tsx';

const same = (a: ExtraBlanks, b: ExtraBlanks): boolean =>
  a.setUp === b.setUp && a.scrapShare === b.scrapShare;
const none = ({ setUp, scrapShare }: ExtraBlanks): boolean => setUp === 0 && scrapShare === 0;
const isWhole = ({ setUp, scrapShare }: ExtraBlanks): boolean => [setUp, scrapShare].every(Number.isFinite);

/** Blanks cut beyond the pieces of a line, with what another choice would do to the plan before it is saved. */
export function BlankFields({ form: { entries, errors, set } }: { form: Form<Settings> }) {
  const kept = useShop().data?.settings;
  const { extraBlanks } = entries;
  const differs = kept !== undefined && isWhole(extraBlanks) && !same(kept.extraBlanks, extraBlanks);
  const would = useWouldDo(differs ? { do: 'settings.save', row: { ...kept, extraBlanks } } : null);
  const { setUp, scrapShare } = USUAL_EXTRA_BLANKS;
  return (
    <Group
      title="Blanks beyond the pieces asked for"
      note="Cut, shown and taken from stock with the others; a part may say otherwise."
    >
      <ExtraBlankFields
        value={extraBlanks}
        errors={errors}
        onChange={(value) => set({ extraBlanks: value })}
      />
      {none(extraBlanks) && (
        <p className={formStyles.note}>
          Exactly as many blanks as pieces are cut.{' '}
          <Button small onPress={() => set({ extraBlanks: USUAL_EXTRA_BLANKS })}>
            {`Usual: ${setUp} a line and ${percentOf(scrapShare)} %`}
          </Button>{' '}
          (common practice, no source)
        </p>
      )}
      {would && (
        <p className={formStyles.note} role="status">
          {would.words}
        </p>
      )}
    </Group>
  );
}
