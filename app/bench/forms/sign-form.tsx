'use client';

import { signWorkInput } from '@/lib/work/schema';
import { CommandForm } from '../../_ui/command-form';
import { Checkbox, ChoiceGroup } from '../../_ui/fields';
import { sign } from '../actions';
import { SigningPassword } from './signing-password';
import { orNull } from './typed';
import { useAct } from './use-act';

interface SignProps {
  readonly workId: string;
  /** Of the entry shown above the form: what changed since is not signed unseen. */
  readonly entryHash: string;
  readonly signer: string;
  /** A deferral's placard stands and has to come down with this signature. */
  readonly placardStands: boolean;
  /** Who did the work, where that was somebody else and the signer has to say how they could (43.3); null otherwise. */
  readonly doneBy: string | null;
}

/** Approval for return to service. Whether the certificate covers it is the server's to say. */
export function SignForm({ workId, entryHash, signer, placardStands, doneBy }: SignProps) {
  const command = useAct({
    action: sign,
    schema: signWorkInput,
    start: { placardRemoved: false, worker: '', password: '' },
    input: (typed) => ({
      ...typed,
      workId,
      entryHash,
      placardRemoved: placardStands ? typed.placardRemoved : null,
      worker: doneBy === null ? null : orNull(typed.worker),
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
      {doneBy !== null && (
        <ChoiceGroup
          name="worker"
          label={`${doneBy} did the work. How could they?`}
          choices={[
            {
              value: 'supervised',
              label: 'I supervised it',
              hint: 'I watched as far as needed to see that it was done right, and was at hand in person (14 CFR 43.3(d)).',
            },
            {
              value: 'certificated',
              label: 'They are certificated for it',
              hint: 'They hold a certificate that lets them do this work themselves (14 CFR 43.3).',
            },
          ]}
        />
      )}
      {placardStands && (
        <Checkbox name="placardRemoved" label="The item works again and I have taken its placard down." />
      )}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
