'use client';

import { useWords } from '#words';
import { CommandForm } from '@/app/_ui/command-form';
import { TextArea, TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { endCertificateInput } from '@/lib/people/schema';
import { endOne } from '../actions';
import styles from '../people.module.css';

/** Ends a certificate: suspended, surrendered, or entered by mistake. */
export function EndCertificateForm({ certificateId, today }: { certificateId: string; today: string }) {
  const t = useWords();
  const command = useCommand<{ revokedOn: string; words: string }, unknown>({
    action: (typed) => endOne({ ...typed, certificateId }),
    schema: endCertificateInput.omit({ certificateId: true }),
    start: { revokedOn: today, words: '' },
  });
  return (
    <CommandForm command={command} submit={t('End the certificate')} label={t('End the certificate')}>
      <p className={styles.words}>
        {t(
          'Suspended, revoked, surrendered, or entered by mistake. From now on it carries nothing; what was signed under it stands.',
        )}
      </p>
      <TextField name="revokedOn" type="date" label={t('Ended on')} />
      <TextArea
        name="words"
        label={t('Why')}
        rows={2}
        maxLength={300}
        hint={t('Without names: it is kept for good.')}
      />
    </CommandForm>
  );
}
