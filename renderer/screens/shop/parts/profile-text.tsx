import { useState } from 'react';
import type { TextFieldProps } from 'react-aria-components';
import { NOTATION_EXAMPLE, readProfile, writeProfile } from '../../../../core/part/notation.ts';
import type { Profile } from '../../../../core/part/profile.ts';
import { sentence } from '../../../../core/result.ts';
import type { LengthUnits } from '../../../../core/units/length.ts';
import { useDecimals } from '../../../ui/decimals.ts';
import { TextField } from '../../../ui/text-field.tsx';

interface Props {
  profile: Profile;
  units: LengthUnits;
  onChange: (profile: Profile) => void;
}

/** What was typed, the profile that it was typed over, and whether it was found not to read. */
interface Typed {
  readonly text: string;
  readonly over: Profile;
  readonly wrong: string | undefined;
}

/** Without its lengths a profile cannot be saved: a text that does not read leaves no older shape behind it. */
const unread = (profile: Profile): Profile => ({ ...profile, flangesMm: profile.flangesMm.map(() => NaN) });

const same = (a: Profile, b: Profile): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The profile as one line of text, typed or pasted. It is read when the field is left, and on Enter; what does not read stays
 * as it was typed until the shape is changed elsewhere.
 */
export function ProfileText({ profile, units, onChange }: Props) {
  const decimals = useDecimals();
  const [kept, setTyped] = useState<Typed | null>(null);
  const typed = kept && same(kept.over, profile) ? kept : null;
  const take = () => {
    if (!typed) return;
    if (typed.text.trim() === '') return setTyped(null);
    const read = readProfile(typed.text, { units, decimals });
    if (read.ok) {
      setTyped(null);
      return onChange(read.value);
    }
    const over = unread(profile);
    setTyped({ text: typed.text, over, wrong: sentence(read.issues) });
    onChange(over);
  };
  const onKey: TextFieldProps['onKeyDown'] = (event) => {
    // Enter takes what was typed before the form does anything with it; all other keys are the form's and the page's.
    if (event.key !== 'Enter' || event.shiftKey || !typed) return event.continuePropagation();
    event.preventDefault();
    take();
  };
  return (
    <TextField
      label="As text"
      long
      help={`Steps from edge to edge, such as ${NOTATION_EXAMPLE[units]}. Enter takes it.`}
      value={typed?.text ?? writeProfile(profile, { units, decimals })}
      onChange={(text) => setTyped({ text, over: profile, wrong: undefined })}
      onBlur={take}
      onKeyDown={onKey}
      error={typed?.wrong}
    />
  );
}
