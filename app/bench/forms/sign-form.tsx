'use client';

import { English, useWords } from '#words';
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
  const t = useWords();
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
    done: t('Signed: approved for return to service for this work.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign for return to service')}
      pendingWords={t('Signing…')}
      label={t('Sign for return to service')}
    >
      {doneBy !== null && (
        <ChoiceGroup
          name="worker"
          label={t('{doneBy} did the work. How could they?', { doneBy })}
          choices={[
            {
              value: 'supervised',
              label: t('I supervised it'),
              hint: t(
                'I watched as far as needed to see that it was done right, and was at hand in person (14 CFR 43.3(d)).',
              ),
            },
            {
              value: 'certificated',
              label: t('They are certificated for it'),
              hint: t('They hold a certificate that lets them do this work themselves (14 CFR 43.3).'),
            },
          ]}
        />
      )}
      {placardStands && <Checkbox name="placardRemoved" label={<English>{PLACARD_DOWN}</English>} />}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}

/** Part of what is signed, so it is said in the language it is kept in. */
const PLACARD_DOWN = 'The item works again and I have taken its placard down.';
