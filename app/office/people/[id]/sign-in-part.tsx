'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { AskFirst } from '@/app/desk/feeds/ask-first';
import { type LinkMade } from '@/lib/people/invite-person';
import { type PersonPage } from '@/lib/people/read-person';
import { endLink, endSessions, makeLink, resetFactor } from '../actions';
import { HandedOver } from '../handed-over';
import { LinkSheet } from '../link-sheet';
import { LinkLine } from '../people-list';
import styles from '../people.module.css';

/** How somebody gets in: their link, their sessions, and a lost second factor. */
export function SignInPart({ person }: { person: PersonPage }) {
  const t = useWords();
  const { id, name, state, link, zone, openSessions, secondFactors } = person;
  return (
    <div className={styles.acts}>
      {link && <LinkLine link={link} zone={zone} />}
      {link?.state === 'open' && (
        <AskFirst
          label={t('End this link')}
          name={name}
          question={t('End the link? Whoever has it can do nothing with it from then on.')}
          yes={t('Yes, end it')}
          no={t('Keep it')}
          action={({ requestId }) => endLink({ requestId, linkId: link.id })}
        />
      )}
      <MakeLink person={person} />
      {state === 'here' && (
        <p className={styles.soft}>
          {t('{openSessions, plural, one {# open session} other {# open sessions}}', { openSessions })}
          {'. '}
          {secondFactors > 0 ? t('Has a second factor.') : t('Has no second factor.')}
        </p>
      )}
      {openSessions > 0 && !person.isOneself && (
        <AskFirst
          label={t('End all their sessions')}
          name={name}
          question={t('End every session of {name}? They sign in again with their password.', { name })}
          yes={t('Yes, end them')}
          no={t('Leave them')}
          action={({ requestId }) => endSessions({ requestId, personId: id })}
        />
      )}
      {secondFactors > 0 && !person.isOneself && <ResetFactor personId={id} name={name} />}
    </div>
  );
}

function MakeLink({ person }: { person: PersonPage }) {
  const t = useWords();
  const [made, setMade] = useState<LinkMade | null>(null);
  const command = useCommand<{ handedOver: string }, LinkMade>({
    action: async (typed) => {
      setMade(null);
      return makeLink({ ...typed, personId: person.id });
    },
    start: { handedOver: '' },
    onDone: setMade,
  });
  const invited = person.state === 'invited';
  return (
    <>
      {made && <LinkSheet link={made} name={person.name} zone={person.zone} />}
      <details className={`${styles.unfold} not-on-paper`}>
        <summary>{invited ? t('Make a new invitation') : t('Make a link for a new password')}</summary>
        <CommandForm command={command} submit={t('Make the link')} label={t('Make a link')}>
          <p className={styles.words}>
            {invited
              ? t('It works once, for 7 days. Earlier links end with it.')
              : t(
                  'It works once, for a day. Earlier links end with it; the password stays until they choose another.',
                )}
          </p>
          <HandedOver sendsLetters={person.sendsLetters} />
        </CommandForm>
      </details>
    </>
  );
}

function ResetFactor({ personId, name }: { personId: string; name: string }) {
  const t = useWords();
  const [done, setDone] = useState(false);
  const command = useCommand<{ why: string; password: string }, unknown>({
    action: (typed) => resetFactor({ ...typed, personId }),
    start: { why: '', password: '' },
    onDone: () => setDone(true),
  });
  if (done) {
    return (
      <Notice tone="blue" title={t('The second factor of {name} is ended.', { name })}>
        <p>{t('They sign in with the password alone and set up a new one under their account.')}</p>
      </Notice>
    );
  }
  return (
    <details className={styles.unfold}>
      <summary>{t('Second factor lost')}</summary>
      <CommandForm command={command} submit={t('End their second factor')} label={t('Second factor lost')}>
        <p className={styles.words}>
          {t(
            'Only when you know that it is them who ask, seen or by a voice you know. It ends their sessions too.',
          )}
        </p>
        <TextField name="why" label={t('Why, and how you know that it is them')} maxLength={300} />
        <TextField name="password" type="password" label={t('Your password')} autoComplete="off" />
      </CommandForm>
    </details>
  );
}
