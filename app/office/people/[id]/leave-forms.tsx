'use client';

import { Say, useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import Link from '@/app/_ui/link';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { AskFirst } from '@/app/desk/feeds/ask-first';
import { type PersonPage } from '@/lib/people/read-person';
import { leaveInput } from '@/lib/people/schema';
import { comeBack, leave } from '../actions';
import styles from '../people.module.css';

/** Somebody leaves. Says first what happens at once, and what waits on them. */
export function LeaveForm({ person }: { person: PersonPage }) {
  const t = useWords();
  const router = useRouter();
  const { flights, work } = person.waiting;
  const command = useCommand<{ leftOn: string }, unknown>({
    action: (typed) => leave({ ...typed, personId: person.id }),
    schema: leaveInput.omit({ personId: true }),
    start: { leftOn: person.today },
    onDone: () => router.refresh(),
  });
  return (
    <details className={styles.unfold}>
      <summary>{t('{name} leaves', { name: person.name })}</summary>
      <CommandForm command={command} submit={t('Let them leave')} label={t('Leaving')}>
        <p className={styles.words}>
          {t(
            'Every session and access key of theirs ends at once, and they can sign nothing here any more. Everything they signed stands.',
          )}
        </p>
        {person.isOneself && <p className={styles.words}>{t('This is you: you are signed out with it.')}</p>}
        {flights + work > 0 && (
          <Notice tone="blue" title={t('Something waits on them.')}>
            {flights > 0 && (
              <p>
                <Say
                  text="{flights, plural, one {# planned flight} other {# planned flights}} with them as pilot: see <a>planned flights</a>."
                  parts={{ a: <Link href="/desk/plans" /> }}
                  values={{ flights }}
                />
              </p>
            )}
            {work > 0 && (
              <p>
                {t(
                  '{work, plural, one {# piece of work} other {# pieces of work}} begun by them and not signed: somebody else has to sign it or give it up.',
                  { work },
                )}
              </p>
            )}
          </Notice>
        )}
        <TextField
          name="leftOn"
          type="date"
          label={t('Last day here')}
          hint={t('Today or earlier, and not before something they did here.')}
        />
      </CommandForm>
    </details>
  );
}

/** Somebody who left is back. */
export function ReturnForm({ personId, name }: { personId: string; name: string }) {
  const t = useWords();
  return (
    <AskFirst
      label={t('Let them return')}
      name={name}
      question={t(
        'Let {name} return? They get the roles they had and sign in with the password they had. Sessions and keys of before stay ended. Look at their certificates.',
        { name },
      )}
      yes={t('Yes, they are back')}
      no={t('Leave it')}
      action={({ requestId }) => comeBack({ requestId, personId })}
    />
  );
}
