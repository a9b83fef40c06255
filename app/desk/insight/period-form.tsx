import { useWords } from '#words';
import { ButtonRow, SubmitButton } from '@/app/_ui/button';
import { SelectField, TextField } from '@/app/_ui/fields';
import Link from '@/app/_ui/link';
import { inAddress, type AskedInAddress } from '@/lib/insight/address';
import { type InsightView } from '@/lib/insight/read-insight';
import { PERIODS } from '@/lib/insight/schema';
import styles from './insight.module.css';

/** Which days, which aircraft: links for the usual periods, and a form whose answer is an address to keep or send on. */
export function PeriodForm({ asked, view }: { asked: AskedInAddress; view: InsightView }) {
  const t = useWords();
  const { aircraft, base } = asked;
  const dated = Boolean(asked.from) || Boolean(asked.until);
  const chosen = dated ? null : (asked.days ?? String(PERIODS[0]));
  return (
    <div className={`${styles.asked} not-on-paper`}>
      <nav aria-label={t('Period')} className={styles.periods}>
        {PERIODS.toSorted((a, b) => a - b).map((days) => (
          <Link
            key={days}
            href={`/desk/insight?${inAddress({ days: String(days), aircraft, base })}`}
            aria-current={chosen === String(days) ? 'page' : undefined}
          >
            {t('Last {days} days', { days })}
          </Link>
        ))}
      </nav>
      {/* Keyed by what is shown: a press on a period is then in the fields too. */}
      <form
        key={inAddress(asked)}
        method="get"
        action="/desk/insight"
        aria-label={t('Period and aircraft')}
        className={styles.form}
      >
        <TextField
          name="from"
          type="date"
          label={t('First day')}
          defaultValue={dated ? (asked.from ?? '') : view.period.from}
        />
        <TextField
          name="until"
          type="date"
          label={t('Last day')}
          defaultValue={dated ? (asked.until ?? '') : view.period.until}
        />
        <SelectField
          name="aircraft"
          label={t('Aircraft')}
          chooseWords={t('All aircraft')}
          defaultValue={aircraft ?? ''}
          choices={view.choices.aircraft.map(({ id, registration }) => ({ value: id, label: registration }))}
        />
        <SelectField
          name="base"
          label={t('Base')}
          chooseWords={t('All bases')}
          defaultValue={base ?? ''}
          choices={view.choices.bases.map(({ id, ident, name }) => ({
            value: id,
            label: `${ident} ${name}`,
          }))}
        />
        <ButtonRow>
          <SubmitButton weight="plain">{t('Show')}</SubmitButton>
        </ButtonRow>
      </form>
    </div>
  );
}
