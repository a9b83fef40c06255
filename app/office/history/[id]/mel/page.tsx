import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { dateInWords } from '@/app/_ui/moment';
import { EmptyState, FactList, Section } from '@/app/_ui/page';
import { Act, ActList } from '@/app/bench/acts';
import { ProofUpload } from '@/app/office/people/[id]/proof-upload';
import { ProofList } from '@/app/office/people/proof-list';
import { mayUse } from '@/lib/access/policy';
import { type AircraftHistory } from '@/lib/carry-over/read-aircraft-history';
import { MEL_DOCS } from '@/lib/mel/mel-columns';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { Columns } from '../../_parts/columns';
import { EndMelForm, LetterForm, NoMelForm } from '../../_parts/mel-forms';
import { MelImportForm } from '../../_parts/mel-import-form';
import { historySheet } from '../../_parts/sheet';
import styles from '../../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Minimum equipment list') };
}

const LEAD = said(
  'Either a list with its letter of authorization (91.213(a)), or somebody signs that there is none.',
);

/** The list in force with its letter, or that there is none. */
export default async function MelPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, 'mel', LEAD, ({ view, who, t }) => {
    const mayChange = mayUse(who.roles, 'mel.import');
    return (
      <>
        <Section title={t('As it stands')}>
          {view.mel ? (
            <InForce mel={view.mel} t={t} />
          ) : view.withoutMel === true ? (
            <p>{t('Operated without a minimum equipment list. Items are deferred under 91.213(d).')}</p>
          ) : (
            <EmptyState title={t('Nobody has said whether this aircraft has a list.')}>
              <p>{t('Until then nothing can be deferred.')}</p>
            </EmptyState>
          )}
          {mayChange ? (
            <ActList>
              {view.mel && (
                <Act title={t('The letter of authorization')}>
                  <LetterForm
                    melId={view.mel.id}
                    letterReference={view.mel.letterReference ?? ''}
                    letterIssuedOn={view.mel.letterIssuedOn ?? ''}
                    signer={who.name}
                  />
                </Act>
              )}
              {view.mel && (
                <Act
                  title={t('Proof of the letter')}
                  hint={t('A scan or a photo of the letter of authorization.')}
                >
                  <ProofUpload about="mel" aboutId={view.mel.id} />
                </Act>
              )}
              {!view.mel && view.withoutMel !== true && (
                <Act title={t('It is operated without a list')}>
                  <NoMelForm aircraftId={view.aircraftId} signer={who.name} />
                </Act>
              )}
              <Act
                title={view.mel ? t('Take in a newer list') : t('Take in a list')}
                hint={t('From a file of its items.')}
              >
                <MelImportForm aircraftId={view.aircraftId} signer={who.name} />
              </Act>
              {view.mel && (
                <Act title={t('End this list')}>
                  <EndMelForm melId={view.mel.id} signer={who.name} />
                </Act>
              )}
            </ActList>
          ) : (
            <p>{t('A manager enters it.')}</p>
          )}
        </Section>
        {mayChange && <Columns title={t('A file of a list')} what="mel" columns={MEL_DOCS} />}
      </>
    );
  });
}

function InForce({ mel, t }: { mel: NonNullable<AircraftHistory['mel']>; t: Translate }) {
  const aboard =
    mel.letterAboard === null
      ? t('not known whether aboard')
      : mel.letterAboard
        ? t('aboard')
        : t('not aboard');
  return (
    <>
      <FactList
        facts={[
          { name: t('List'), value: [mel.reference, mel.revision].filter(Boolean).join(', ') },
          { name: t('Letter'), value: `${mel.letterReference ?? t('Not known')}, ${aboard}` },
          {
            name: t('Repair intervals'),
            value: mel.enforceCategories ? t('They bind') : t('They do not bind'),
          },
        ]}
      />
      <ProofList proofs={mel.proofs} />
      {mel.mark && (
        <p className={styles.soft}>
          {t('Held against the approved list by {by}, {on}.', {
            by: mel.mark.by,
            on: dateInWords(mel.mark.on),
          })}
        </p>
      )}
      <details>
        <summary className={styles.fold}>
          {t('{n, plural, one {# item} other {# items}}', { n: mel.items.length })}
        </summary>
        <ul className={styles.rows}>
          {mel.items.map((item) => (
            <li key={item.id} className={styles.row}>
              <b>{item.title}</b>
              <span className={styles.soft}>
                {t('Category {category}. {equipment}', {
                  category: item.category,
                  equipment: item.equipment,
                })}
              </span>
            </li>
          ))}
        </ul>
      </details>
    </>
  );
}
