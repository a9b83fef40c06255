'use client';

import { Say, useWords } from '#words';
import { CommandForm } from '@/app/_ui/command-form';
import { TextArea } from '@/app/_ui/fields';
import { Moment } from '@/app/_ui/moment';
import { useCommand } from '@/app/_ui/use-command';
import { type PersonPage } from '@/lib/people/read-person';
import { namePreventiveInput, withdrawPreventiveInput } from '@/lib/people/schema';
import { nameOne, takeBack } from '../actions';
import styles from '../people.module.css';

/** Naming a pilot for preventive maintenance, and taking it back. */
export function Naming({ person }: { person: PersonPage }) {
  const t = useWords();
  const pilot = person.certificates.find(({ kind, state }) => kind === 'pilot' && state === 'stands');
  return (
    <>
      <p className={styles.words}>
        {t(
          'A pilot may do preventive maintenance on aircraft they own or operate (14 CFR 43.3(g)) and approve it with at least a private certificate (43.7(f)). For aircraft of the school the school names, in writing, who may. Only items of Appendix A(c) count.',
        )}
      </p>
      {person.naming && <Named naming={person.naming} zone={person.zone} />}
      {!person.naming && pilot && <NameForm personId={person.id} />}
      {!person.naming && !pilot && <p className={styles.soft}>{t('Enter the pilot certificate first.')}</p>}
    </>
  );
}

function NameForm({ personId }: { personId: string }) {
  const t = useWords();
  const command = useCommand<{ words: string }, unknown>({
    action: (typed) => nameOne({ ...typed, personId }),
    schema: namePreventiveInput.omit({ personId: true }),
    start: { words: '' },
  });
  return (
    <details className={styles.unfold}>
      <summary>{t('Name for preventive maintenance')}</summary>
      <CommandForm
        command={command}
        submit={t('Name the pilot')}
        label={t('Name for preventive maintenance')}
      >
        <TextArea
          name="words"
          label={t('What the pilot may do')}
          hint={t(
            'The naming itself: which items of 43 Appendix A(c), on which aircraft, with what at hand.',
          )}
          maxLength={600}
        />
      </CommandForm>
    </details>
  );
}

function Named({ naming, zone }: { naming: NonNullable<PersonPage['naming']>; zone: string }) {
  const t = useWords();
  const command = useCommand<{ words: string }, unknown>({
    action: (typed) => takeBack({ ...typed, authorizationId: naming.id }),
    schema: withdrawPreventiveInput.omit({ authorizationId: true }),
    start: { words: '' },
  });
  return (
    <>
      <div className={styles.item}>
        <p>{naming.words}</p>
        <p className={styles.soft}>
          <Say
            text="Named by {name}, {when}."
            values={{ name: naming.byName, when: <Moment at={naming.at} zone={zone} /> }}
          />
        </p>
      </div>
      <details className={styles.unfold}>
        <summary>{t('Take the naming back')}</summary>
        <CommandForm command={command} submit={t('Take it back')} label={t('Take the naming back')}>
          <p className={styles.words}>{t('What was signed under it stands; nothing more can be.')}</p>
          <TextArea name="words" label={t('Why')} rows={2} maxLength={600} />
        </CommandForm>
      </details>
    </>
  );
}
