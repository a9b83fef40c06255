'use client';

import { TextField } from '../../_ui/fields';

/**
 * The password, asked again for every signature. Browsers are asked not to fill it in: whoever signs does so on purpose
 * (AC 120-78B).
 */
export function SigningPassword({ name }: { name: string }) {
  return (
    <TextField
      name="password"
      label="Your password, to sign"
      hint={`You sign as ${name}.`}
      type="password"
      autoComplete="off"
    />
  );
}
