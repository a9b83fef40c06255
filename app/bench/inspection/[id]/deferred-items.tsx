import { useWords } from '#words';
import { type DeferredView, type InspectionView } from '@/lib/inspections/read-inspection';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { Card, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { Act, ActList } from '../../acts';
import { RulingNotice } from '../../ruling-notice';
import { DisposeForm } from '../dispose-form';
import styles from '../inspection.module.css';

/** Every live deferral with what becomes of it: 91.405(c). Nothing is signed while one has no disposition. */
export function DeferredItems({ view, acts }: { view: InspectionView; acts: boolean }) {
  const t = useWords();
  if (view.deferred.length === 0) return null;
  return (
    <Section title={t('Deferred items')}>
      <p className={styles.soft}>
        {t('At this inspection each is repaired, replaced, removed or inspected.')}
      </p>
      <Cite cite="14cfr91.405(c)" />
      {view.deferred.map((item) => (
        <Card key={item.deferralId} edge={item.inspected ? undefined : 'amber'}>
          <div className={styles.head}>
            <h3>
              {item.number} {item.title}
            </h3>
            <Tag tone={item.inspected ? 'blue' : 'amber'} size="small">
              {item.inspected ? t('Inspected, stays deferred') : t('Disposition owed')}
            </Tag>
          </div>
          <p className={styles.soft}>
            {item.placard
              ? t('Placard: {placard}', { placard: item.placard })
              : t('Its placard is not in place.')}{' '}
            <Link href={`/bench/write-up/${item.discrepancyId}`}>
              {item.placard ? t('Repair or replace it') : t('Put up the placard, repair or replace it')}
            </Link>
          </p>
          {acts && !item.inspected && <Dispose view={view} item={item} />}
        </Card>
      ))}
    </Section>
  );
}

function Dispose({ view, item }: { view: InspectionView; item: DeferredView }) {
  const t = useWords();
  return (
    <ActList>
      <Act
        title={t('Say what becomes of {number}', { number: item.number })}
        hint={t('Inspected and left deferred, or removed for good.')}
      >
        <RulingNotice
          ruling={view.me.mayDetermine}
          allowed={t('Your certificates let you determine that it is no hazard.')}
          refused={t('Your certificates do not let you leave it inoperative.')}
        />
        <DisposeForm
          deferralId={item.deferralId}
          at={{ inspectionId: view.id, complianceId: null }}
          signer={view.me.name}
          mayBeRemoved={item.method === 'removed' && item.removalSigned}
          together={item.together}
        />
      </Act>
    </ActList>
  );
}
