import { Say, useWords } from '#words';
import { mayUse, type Role } from '@/lib/access/policy';
import { type ComplianceView, type RequirementView } from '@/lib/inspections/read-requirement';
import { CarriedMark } from '../../../_ui/carried-mark';
import Link from '../../../_ui/link';
import { DateText, HoursText, Moment } from '../../../_ui/moment';
import { Card, EmptyState, FactList, Section } from '../../../_ui/page';
import { Tag } from '../../../_ui/tag';
import styles from '../../inspection/inspection.module.css';
import { type PreventiveChoice } from '../../preventive-choices';
import { WorkPart } from '../../work-part';

/** Shown at once; older records unfold. */
const SHOWN = 5;

interface HistoryProps {
  readonly view: RequirementView;
  readonly roles: readonly Role[];
  readonly items: readonly PreventiveChoice[];
}

/** Every record, newest first; what was corrected stays, and says so. */
export function History({ view, roles, items }: HistoryProps) {
  const t = useWords();
  const [first, older] = [view.history.slice(0, SHOWN), view.history.slice(SHOWN)];
  const signed = view.work.filter(({ state }) => state === 'signed');
  const around = { zone: view.zone, me: view.me, summary: { placards: [] }, recurs: view.kind };
  return (
    <Section title={t('Records')}>
      {first.length === 0 && (
        <EmptyState title={t('Nobody has recorded when this was last done.')}>
          <p>{t('Until somebody does, it bars what it would bar when overdue.')}</p>
        </EmptyState>
      )}
      {first.map((one) => (
        <Record key={one.id} one={one} zone={view.zone} mayRead={mayUse(roles, 'inspection.read')} />
      ))}
      {older.length > 0 && (
        <details>
          <summary className={styles.fold}>{t('{older} older', { older: older.length })}</summary>
          <div className={styles.rows}>
            {older.map((one) => (
              <Record key={one.id} one={one} zone={view.zone} mayRead={mayUse(roles, 'inspection.read')} />
            ))}
          </div>
        </details>
      )}
      {signed.map((work) => (
        <WorkPart key={work.id} view={around} work={work} roles={roles} items={items} />
      ))}
    </Section>
  );
}

function Record({ one, zone, mayRead }: { one: ComplianceView; zone: string; mayRead: boolean }) {
  const t = useWords();
  return (
    <Card>
      <div className={styles.head}>
        <h3>
          <DateText date={one.doneOn} />{' '}
          <Say text="at <hoursText/>" parts={{ hoursText: <HoursText tenths={one.ttisTenths} /> }} />
        </h3>
        <Mark one={one} />
      </div>
      <FactList
        facts={[
          { name: t('Approved by'), value: one.approvedBy },
          ...(one.wasDueTenths === null
            ? []
            : [{ name: t('Was due at'), value: <HoursText tenths={one.wasDueTenths} /> }]),
          ...(one.testedToFt === null
            ? []
            : [{ name: t('Tested to'), value: t('{testedToFt} ft', { testedToFt: one.testedToFt }) }]),
          ...(one.newExpiry === null
            ? []
            : [{ name: t('New date'), value: <DateText date={one.newExpiry} /> }]),
          ...one.details,
        ]}
      />
      {one.carried && (
        <p>
          <CarriedMark mark={one.carried} />
        </p>
      )}
      <p className={styles.soft}>
        <Say
          text="Recorded by {recordedBy}, <moment/>."
          parts={{ moment: <Moment at={one.recordedAt} zone={zone} /> }}
          values={{ recordedBy: one.recordedBy }}
        />{' '}
        {one.inspectionId && mayRead && (
          <Link href={`/bench/inspection/${one.inspectionId}`}>{t('The inspection')}</Link>
        )}
      </p>
    </Card>
  );
}

function Mark({ one }: { one: ComplianceView }) {
  const t = useWords();
  if (one.superseded)
    return (
      <Tag tone="grey" size="small">
        {t('Superseded')}
      </Tag>
    );
  if (one.authorised === true) return null;
  return (
    <Tag tone="red" size="small">
      {one.authorised === false ? t('Does not count: not authorized') : t('Not known: whether authorized')}
    </Tag>
  );
}
