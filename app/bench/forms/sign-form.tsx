'use client';

import { signWorkInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox } from '../../_ui/fields';
import { sign } from '../actions';
import { SigningPassword } from './signing-password';
import { useAct } from './use-act';

interface SignProps {
  readonly workId: string;
  /** Of the entry shown above the form: what changed since is not signed unseen. */
  readonly entryHash: string;
  readonly signer: string;
  /** A deferral's placard stands and has to come down with this signature. */
  readonly placardStands: boolean;
}

/** Approval for return to service. Whether the certificate covers it is the server's to say. */
export function SignForm({ workId, entryHash, signer, placardStands }: SignProps) {
  const command = useAct({
    action: sign,
    schema: signWorkInput,
    start: { placardRemoved: false, password: '' },
    input: (typed) => ({
      ...typed,
      workId,
      entryHash,
      placardRemoved: placardStands ? typed.placardRemoved : null,
    }),
    done: 'Signed: approved for return to service for this work.',
  });
  return (
    <CommandForm
      command={command}
      submit="Sign for return to service"
      pendingWords="Signing…"
      label="Sign for return to service"
    >
      {placardStands && (
        <Checkbox name="placardRemoved" label="The item works again and I have taken its placard down." />
      )}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
