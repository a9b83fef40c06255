import { English, useWords } from '#words';
import { type InspectionView, type PartView } from '@/lib/inspections/read-inspection';
import { Moment } from '../../../_ui/moment';
import { Card, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { Act, ActList } from '../../acts';
import { RulingNotice } from '../../ruling-notice';
import { partWords } from '../../words';
import { SignPartForm } from '../sign-part-form';
import styles from '../inspection.module.css';

/** One entry for each logbook, each with its own signature. */
export function Parts({ view, acts }: { view: InspectionView; acts: boolean }) {
  const t = useWords();
  return (
    <Section title={t('One entry for each logbook')}>
      {acts && <Against view={view} />}
      {view.parts.map((part) => (
        <Card key={part.part} edge={part.signed ? undefined : 'amber'}>
          <div className={styles.head}>
            <h3>{partWords(t, part.part)}</h3>
            <PartTag part={part} />
          </div>
          {part.signed && <Signed part={part.signed} zone={view.zone} />}
          {acts && part.mine && (
            <ActList>
              <Act
                title={t('Sign for the {part}', { part: partWords(t, part.part).toLowerCase() })}
                hint={
                  part.mine.allowed ? t('Airworthy, or not with the list.') : t('Not with your certificates.')
                }
              >
                <RulingNotice
                  ruling={part.mine}
                  allowed={t('You sign under {kind}, {number}.', {
                    kind: part.mine.certificate?.kind ?? '',
                    number: part.mine.certificate?.number ?? '',
                  })}
                  refused={t('Your certificates do not allow this signature.')}
                  whoCan={part.mine.whoCan}
                />
                <SignPartForm
                  inspectionId={view.id}
                  part={part.part}
                  partName={partWords(t, part.part)}
                  entryHash={part.entryHash}
                  signer={view.me.name}
                  statements={view.statements}
                />
              </Act>
            </ActList>
          )}
        </Card>
      ))}
    </Section>
  );
}

function PartTag({ part }: { part: PartView }) {
  const t = useWords();
  if (!part.signed)
    return (
      <Tag tone="amber" size="small">
        {t('Signature owed')}
      </Tag>
    );
  return (
    <Tag tone={part.signed.airworthy ? 'green' : 'red'} size="small">
      {part.signed.airworthy ? t('Signed, airworthy') : t('Signed, not airworthy')}
    </Tag>
  );
}

function Signed({ part, zone }: { part: NonNullable<PartView['signed']>; zone: string }) {
  const t = useWords();
  return (
    <>
      <blockquote className={styles.statement}>
        <English>{part.statement}</English>
      </blockquote>
      <p className={styles.soft}>
        {part.by}, {part.certificateKind} {part.certificateNumber}, <Moment at={part.at} zone={zone} />.{' '}
        <code title={part.hash}>
          <span className="out-of-sight">{t('hash')} </span>
          {part.hash.slice(0, 12)}
        </code>
      </p>
    </>
  );
}

/** What stands between the entry and each of the two answers, before anybody types a password. */
function Against({ view: { against } }: { view: InspectionView }) {
  const t = useWords();
  if (against.airworthy.length === 0) return null;
  return (
    <Card edge="amber">
      <p>
        <b>{t('As it stands it cannot be signed as airworthy.')}</b>
      </p>
      <VerdictLines lines={against.airworthy} />
      {against.notAirworthy.length > 0 && (
        <details>
          <summary className={styles.fold}>{t('Nor as not airworthy, yet')}</summary>
          <VerdictLines lines={against.notAirworthy} />
        </details>
      )}
    </Card>
  );
}
