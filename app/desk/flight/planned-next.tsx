import { useWords } from '#words';
import Link from '@/app/_ui/link';
import { momentInWords } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { type PlanChoice } from '@/lib/flights/plans-to-compose';
import { STATE_WORDS } from '../../_flight/state-mark';
import styles from './planned-next.module.css';

/** The flights planned next, each fills the form in one press; and which plan the form below was filled from. */
export function PlannedNext({ plans, chosen }: { plans: readonly PlanChoice[]; chosen: PlanChoice | null }) {
  const t = useWords();
  const others = plans.filter(({ id }) => id !== chosen?.id);
  return (
    <div className={styles.part}>
      {chosen && (
        <Notice tone="blue" title={t('From the plan: {in}', { in: inWords(chosen) })}>
          <p>{t('Filled in as planned. What the plan does not say is left for you to answer.')}</p>
          {chosen.release && (
            <p>
              <Link href={`/desk/release/${chosen.release.releaseId}`} className={styles.line}>
                {t('It was released before: {state_words}', {
                  state_words: STATE_WORDS[chosen.release.state].toLowerCase(),
                })}
              </Link>
            </p>
          )}
        </Notice>
      )}
      {others.length > 0 && (
        <nav aria-label={t('Planned next')}>
          <h2 className={styles.title}>{t('Planned next')}</h2>
          <ul className={styles.plans}>
            {others.map((plan) => (
              <li key={plan.id}>
                <Link href={`/desk/flight?plan=${plan.id}`} className={styles.plan}>
                  <b>{plan.registration}</b> {momentInWords(plan.departAt, plan.from.zone)}
                  <span>
                    {[plan.pilot ?? t('No pilot named yet'), plan.words].filter(Boolean).join(', ')}
                  </span>
                </Link>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </div>
  );
}

const inWords = ({ registration, departAt, from, words }: PlanChoice): string =>
  [registration, momentInWords(departAt, from.zone), words].filter(Boolean).join(', ');
