import { Say, useWords } from '#words';
import { Ago, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type OwnAccount, type SessionView } from '@/lib/access/account/read-own-account';
import { said } from '@/lib/words/said';
import styles from './account.module.css';
import { EndOne, EndOthers } from './end-session';

const WITH: Readonly<Record<SessionView['secondFactor'], string>> = {
  none: said('Signed in with the password alone.'),
  totp: said('Signed in with password and authenticator app.'),
  passkey: said('Signed in with password and passkey.'),
  recovery: said('Signed in with password and a recovery code.'),
};

/** Every session that counts, this one marked. Ending one throws that browser out at its next step. */
export function SessionList({ account: { sessions, asOf } }: { account: OwnAccount }) {
  const t = useWords();
  return (
    <>
      <p className={styles.words}>
        {t(
          'Each browser you signed in with, for twelve hours at most. End what you do not know, and change your password.',
        )}
      </p>
      {sessions.filter(({ thisOne }) => !thisOne).length > 1 && <EndOthers />}
      <ul className={styles.list}>
        {sessions.map((session) => (
          <li key={session.id} className={styles.item}>
            <div className={styles.head}>
              <h3>{session.device}</h3>
              {session.thisOne && (
                <Tag tone="blue" size="small">
                  {t('This one')}
                </Tag>
              )}
            </div>
            <p className={styles.soft}>
              <Say
                text="Began {began}. Last seen {seen}."
                values={{
                  began: <Moment at={session.beganAt} zone="UTC" />,
                  seen: <Ago at={session.lastSeenAt} now={asOf} />,
                }}
              />{' '}
              {t(WITH[session.secondFactor])}
            </p>
            {!session.thisOne && <EndOne id={session.id} device={session.device} />}
          </li>
        ))}
      </ul>
    </>
  );
}
