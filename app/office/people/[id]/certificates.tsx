import { Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { EmptyState } from '@/app/_ui/page';
import { DateText } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { CERTIFICATE_KINDS } from '@/lib/people/certificate-schema';
import { type CertificateView } from '@/lib/people/certificate-view';
import { type PersonPage } from '@/lib/people/read-person';
import { StandingLine } from '../people-list';
import { GRADE_WORDS, KIND_WORDS, RATING_WORDS } from '../words';
import { CertificateForm } from './certificate-form';
import { EndCertificateForm } from './end-certificate-form';
import { ProofList } from '../proof-list';
import { ProofUpload } from './proof-upload';
import styles from '../people.module.css';

/** Certificates: those that stand, each with renewing, ending and its proofs; then what there was before. */
export function Certificates({ person, mayEnter }: { person: PersonPage; mayEnter: boolean }) {
  const t = useWords();
  const stands = person.certificates.filter(({ state }) => state === 'stands');
  const before = person.certificates.filter(({ state }) => state !== 'stands');
  const missing = CERTIFICATE_KINDS.filter((kind) => !stands.some((one) => one.kind === kind));
  return (
    <>
      {stands.length === 0 && (
        <EmptyState title={t('No certificate stands.')}>
          <p>
            {t('Without one this person can sign nothing. Enter what they hold, from the document itself.')}
          </p>
        </EmptyState>
      )}
      <ul className={styles.list}>
        {stands.map((one) => (
          <li key={one.id} className={styles.item}>
            <Head certificate={one} />
            <StandingLine certificate={one} />
            <ProofList proofs={one.proofs} />
            {mayEnter && (
              <>
                <ProofUpload about="certificate" aboutId={one.id} />
                <details className={styles.unfold}>
                  <summary>{t('Renew or put right')}</summary>
                  <CertificateForm personId={person.id} kind={one.kind} renews={one} />
                </details>
                <details className={styles.unfold}>
                  <summary>{t('End')}</summary>
                  <EndCertificateForm certificateId={one.id} today={person.today} />
                </details>
              </>
            )}
          </li>
        ))}
      </ul>
      {mayEnter &&
        missing.map((kind) => (
          <details key={kind} className={styles.unfold}>
            <summary>{t('Enter: {kind}', { kind: t(KIND_WORDS[kind]) })}</summary>
            <CertificateForm personId={person.id} kind={kind} renews={null} />
          </details>
        ))}
      {before.length > 0 && (
        <details className={styles.unfold}>
          <summary>{t('Before: {count}', { count: before.length })}</summary>
          <ul className={styles.list}>
            {before.map((one) => (
              <li key={one.id} className={`${styles.item} ${styles.old}`}>
                <Head certificate={one} />
                {one.ended && (
                  <p className={styles.soft}>
                    <Say
                      text="Ended on {day}: {why}"
                      values={{ day: <DateText date={one.ended.on} />, why: one.ended.why }}
                    />
                  </p>
                )}
                <ProofList proofs={one.proofs} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </>
  );
}

function Head({ certificate }: { certificate: CertificateView }) {
  const t = useWords();
  return (
    <>
      <div className={styles.head}>
        <h3>{t(KIND_WORDS[certificate.kind])}</h3>
        {certificate.state !== 'stands' && (
          <Tag tone="grey" shape="cross" size="small">
            {certificate.state === 'renewed' ? t('Renewed since') : t('Ended')}
          </Tag>
        )}
      </div>
      <p>
        <code>{certificate.number}</code>
        {detail(t, certificate)}
      </p>
    </>
  );
}

function detail(t: Translate, { grade, ratings, issuedOn }: CertificateView): string {
  const parts = [
    grade ? t(GRADE_WORDS[grade] ?? grade) : '',
    ...ratings.map((rating) => t(RATING_WORDS[rating] ?? rating)),
    issuedOn ? t('issued {day}', { day: issuedOn }) : '',
  ].filter(Boolean);
  return parts.length > 0 ? `: ${parts.join(', ')}` : '';
}
