import { Say, useEnglish, useWords } from '#words';
import Link from '@/app/_ui/link';
import { DateText, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type CertificateView } from '@/lib/people/certificate-view';
import { type LinkState } from '@/lib/people/person-state';
import { type PersonOnList } from '@/lib/people/read-people';
import { KIND_WORDS, LINK_WORDS, ROLE_WORDS, STATE_WORDS } from './words';
import styles from './people.module.css';

/** People, each with what they may do here and hold. */
export function PeopleList({ people }: { people: readonly PersonOnList[] }) {
  const t = useWords();
  return (
    <ul className={styles.cards}>
      {people.map((person) => (
        <li key={person.id} className={styles.item}>
          <div className={styles.head}>
            <Link href={`/office/people/${person.id}`}>
              {person.state === 'erased' ? t('Erased person') : person.name}
            </Link>
            {person.state !== 'here' && (
              <Tag tone="grey" shape={person.state === 'invited' ? 'question' : 'cross'} size="small">
                {t(STATE_WORDS[person.state])}
              </Tag>
            )}
          </div>
          {person.state !== 'erased' && (
            <p>
              {person.roles.map((role) => t(ROLE_WORDS[role])).join(', ') || t('No role')}
              {person.base && `, ${person.base.ident}`}
            </p>
          )}
          {person.leftOn && (
            <p className={styles.soft}>
              <Say text="Left on {day}." values={{ day: <DateText date={person.leftOn} /> }} />
            </p>
          )}
          {person.state === 'invited' && <LinkLine link={person.link} zone={person.zone} />}
          {person.state === 'here' && (
            <p className={styles.soft}>
              {person.certificates.map(({ kind }) => t(KIND_WORDS[kind])).join(', ') ||
                t('No certificate entered')}
            </p>
          )}
        </li>
      ))}
    </ul>
  );
}

/** Whose certificates run out soon, have run out, or are not known well enough to sign. */
export function Warnings({ people }: { people: readonly PersonOnList[] }) {
  return (
    <ul className={styles.list}>
      {people.map(({ id, name, warnings }) => (
        <li key={id} className={styles.item}>
          <div className={styles.head}>
            <Link href={`/office/people/${id}#certificates`}>{name}</Link>
          </div>
          {warnings.map((one) => (
            <StandingLine key={one.id} certificate={one} />
          ))}
        </li>
      ))}
    </ul>
  );
}

/** How a certificate stands: a mark, its kind, and the engine's words. */
export function StandingLine({ certificate }: { certificate: CertificateView }) {
  const t = useWords();
  const english = useEnglish();
  const { kind, standing } = certificate;
  return (
    <p className={styles.warn}>
      {standing.state === 'over' && (
        <Tag tone="red" shape="cross" size="small">
          {t('Over')}
        </Tag>
      )}
      {standing.state === 'soon' && (
        <Tag tone="amber" size="small">
          {t('Runs out soon')}
        </Tag>
      )}
      {standing.state === 'not-known' && (
        <Tag tone="amber" shape="question" size="small">
          {t('Not known')}
        </Tag>
      )}
      <span>{t(KIND_WORDS[kind])}:</span> <span {...english}>{standing.because}</span>
    </p>
  );
}

/** The newest link of somebody, in words. */
export function LinkLine({ link, zone }: { link: LinkState | null; zone: string }) {
  const t = useWords();
  if (!link) return <p className={styles.soft}>{t('No link was made.')}</p>;
  const until = <Moment at={link.expiresAt} zone={zone} />;
  const what = t(LINK_WORDS[link.kind]);
  return (
    <p className={styles.soft}>
      {link.state === 'open' && <Say text="{what}: works until {until}." values={{ what, until }} />}
      {link.state === 'over' && (
        <Say text="{what}: was over at {until}. Make a new one." values={{ what, until }} />
      )}
      {link.state === 'used' && t('{what}: used.', { what })}
      {link.state === 'ended' && t('{what}: ended. Make a new one.', { what })}{' '}
      {link.letter === 'waiting' && t('Its letter waits to be sent.')}
      {link.letter === 'sent' && t('Its letter was sent.')}
      {link.letter === 'given-up' && t('Its letter could not be sent. Check the address, or print the link.')}
    </p>
  );
}
