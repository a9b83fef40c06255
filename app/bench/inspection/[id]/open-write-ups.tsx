import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type InspectionView, type OpenWriteUpView } from '@/lib/inspections/read-inspection';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { DateText } from '../../../_ui/moment';
import { Card, EmptyState, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import { Act, ActList } from '../../acts';
import { RulingNotice } from '../../ruling-notice';
import { ListForm } from '../list-form';
import styles from '../inspection.module.css';

const STANDING = {
  'repair-owed': said('Neither repaired, deferred nor found within limits: list it, or settle it first.'),
  'within-limits': said('Found within limits.'),
  cosmetic: said('Cosmetic.'),
  deferred: said('Deferred.'),
} as const;

/** What is written up and open, and the signed list of 43.11(b) over it. */
export function OpenWriteUps({ view, acts }: { view: InspectionView; acts: boolean }) {
  const t = useWords();
  const somethingToList = view.open.length > 0 || view.deferred.length > 0;
  return (
    <Section
      title={t('Discrepancies')}
      side={acts && <Link href={`/ramp/${view.aircraftId}/finding`}>{t('Write up what you found')}</Link>}
    >
      {acts && view.open.length === 0 && <EmptyState title={t('Nothing else is written up and open.')} />}
      {view.open.length > 0 && (
        <Card>
          <ul className={styles.rows}>
            {view.open.map((one) => (
              <li key={one.id} className={styles.row}>
                <Tag tone={one.standing === 'repair-owed' ? 'red' : 'blue'} size="small">
                  {one.standing === 'repair-owed' ? t('Repair owed') : t('May stay')}
                </Tag>
                <Link href={`/bench/write-up/${one.id}`}>
                  {one.number} {one.title}
                </Link>
                <span className={styles.soft}>{standingSaid(t, one)}</span>
              </li>
            ))}
          </ul>
        </Card>
      )}
      {view.list && <ListInForce list={view.list} />}
      {acts && somethingToList && (
        <ActList>
          <Act
            title={view.list ? t('Sign a new list') : t('Sign the list')}
            hint={t('What makes it unairworthy, and what stays deferred and placarded: 14 CFR 43.11(b).')}
          >
            <RulingNotice
              ruling={view.me.mayGiveList}
              allowed={t('Your certificates reach this inspection, and so its list.')}
              refused={t('The list is signed by whoever makes the inspection.')}
            />
            <ListForm
              inspectionId={view.id}
              signer={view.me.name}
              seen={view.openHash}
              asked={view.open.map((one) => ({
                id: one.id,
                label: `${one.number} ${one.title}`,
                standing: standingSaid(t, one),
              }))}
            />
          </Act>
        </ActList>
      )}
    </Section>
  );
}

const standingSaid = (t: Translate, { standing, withinLimits }: OpenWriteUpView): string =>
  withinLimits && standing === 'within-limits'
    ? t('Found within limits: {withinLimits}', { withinLimits })
    : t(STANDING[standing]);

function ListInForce({ list }: { list: NonNullable<InspectionView['list']> }) {
  const t = useWords();
  return (
    <Card>
      <h3>
        {t('List dated')} <DateText date={list.dated} />
        {t(', signed by {by}', { by: list.by })}
      </h3>
      <ul className={styles.rows}>
        {list.items.map((item) => (
          <li key={item.discrepancyId} className={styles.row}>
            <Tag tone={item.standing === 'unairworthy' ? 'red' : 'blue'} size="small">
              {item.standing === 'unairworthy' ? t('Unairworthy') : t('Inoperative, placarded')}
            </Tag>
            <Link href={`/bench/write-up/${item.discrepancyId}`}>
              {item.number} {item.title}
            </Link>
            {item.placard && <span className={styles.soft}>{item.placard}</span>}
          </li>
        ))}
      </ul>
      <p className={styles.soft}>
        {t(
          'Each unairworthy item is cleared by an entry of anybody rated for it; no second inspection is needed.',
        )}
      </p>
      <Cite cite="14cfr43.11(a)(5)" />
    </Card>
  );
}
