'use client';

import { useWords } from '#words';
import { TextField } from '../../_ui/fields';

/**
 * The password, asked again for every signature. Browsers are asked not to fill it in: whoever signs does so on purpose
 * (AC 120-78B).
 */
export function SigningPassword({ name }: { name: string }) {
  const t = useWords();
  return (
    <TextField
      name="password"
      label={t('Your password, to sign')}
      hint={t('You sign as {name}.', { name })}
      type="password"
      autoComplete="off"
    />
  );
}
