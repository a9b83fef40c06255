import { English, Say, useEnglish, useWords } from '#words';
import { Cite } from '@/app/_ui/cite';
import { dateInWords } from '@/app/_ui/moment';
import { type PersonPage } from '@/lib/people/read-person';
import { EraseForm } from './erase-form';
import styles from '../people.module.css';

/** A copy of somebody's data, and erasing what the law lets be erased once they have left. */
export function PersonalData({ person, signerName }: { person: PersonPage; signerName: string }) {
  const t = useWords();
  const { erasure, state } = person;
  return (
    <>
      <p>
        <a href={`/api/personal-data?person=${person.id}`} download>
          {t('Everything about this person as a file (JSON)')}
        </a>
      </p>
      {(state === 'here' || state === 'invited') && (
        <p className={styles.soft}>{t('It can be erased once they have left.')}</p>
      )}
      {erasure && (
        <details className={styles.unfold}>
          <summary>{t('Erase personal data')}</summary>
          <Stays erasure={erasure} />
          <EraseForm personId={person.id} today={person.today} signerName={signerName} />
        </details>
      )}
    </>
  );
}

/** Said before anything is erased: what goes, what stays, and which paragraph keeps it. */
function Stays({ erasure: { kept, signed } }: { erasure: NonNullable<PersonPage['erasure']> }) {
  const t = useWords();
  const english = useEnglish();
  const keep = signed.longest;
  return (
    <div className={styles.acts}>
      <p className={styles.words}>
        {t(
          'Erased: name, e-mail address, password, second factors, sessions, addresses and texts of letters, files of proofs, and the numbers of certificates nothing was signed under. Everywhere a list shows “Erased person” from then on.',
        )}
      </p>
      <p className={styles.words}>
        <Say
          text="<b>The name inside what was signed stays.</b> An entry without the name, and the kind and number of the certificate, would be no entry."
          parts={{ b: <strong /> }}
        />
      </p>
      {keep && (
        <div>
          <p className={styles.words}>
            {t(
              '{records, plural, one {# signed record} other {# signed records}}, of which the law asks for {asked} today. The longest:',
              { records: signed.records, asked: signed.asked },
            )}{' '}
            <English>{keep.because}</English>{' '}
            {/^\d{4}-/.test(keep.keepThrough) &&
              t('Through {date}.', { date: dateInWords(keep.keepThrough) })}
          </p>
          <Cite cite={keep.cite} />
        </div>
      )}
      {kept.length > 0 && (
        // What scrolls has to be reached by the keyboard.
        // eslint-disable-next-line jsx-a11y/no-noninteractive-tabindex
        <div className={styles.scroll} tabIndex={0} role="region" aria-label={t('What stays')}>
          <table className={styles.kept}>
            <caption className={styles.soft}>{t('What stays')}</caption>
            <thead>
              <tr>
                <th scope="col">{t('What')}</th>
                <th scope="col">{t('Rows')}</th>
                <th scope="col">{t('Why')}</th>
              </tr>
            </thead>
            <tbody>
              {kept.map(({ table, says, rows, why, cite }) => (
                <tr key={table}>
                  <th scope="row" {...english}>
                    {says}
                  </th>
                  <td>{rows}</td>
                  <td {...english}>
                    {why} {cite && <Cite cite={cite} plain />}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </div>
  );
}
