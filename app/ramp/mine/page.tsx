import { Say } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import Link from '../../_ui/link';
import { readOwnFindings } from '@/lib/findings/own-findings';
import { requireActor } from '../../_session/actor-ref';
import { Moment } from '../../_ui/moment';
import { Card, EmptyState, PageTitle } from '../../_ui/page';
import { Shell } from '../../_ui/shell';
import { Events } from '../_parts/events';
import { PlainProblem } from '../_parts/plain-problem';
import styles from '../_parts/ramp.module.css';
import { whereInWords } from '../_parts/words';
import { SeverityOf, StateMark } from '../_parts/write-up-card';
import { News } from './news';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('My write-ups') };
}
export const dynamic = 'force-dynamic';

/** What became of everything I wrote up or have seen again. */
export default async function MinePage() {
  const t = await words();
  const { ref, who } = await requireActor('/ramp/mine');
  const mine = await readOwnFindings(ref, {});
  if (!mine.ok) return <PlainProblem who={who} problem={mine.problem} />;
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle
          back={{ href: '/ramp', label: t('All aircraft') }}
          lead={t('The last fifty, newest first, with the words of whoever saw to them.')}
        >
          {t('What became of my write-ups')}
        </PageTitle>
        <News actor={ref} />
        {mine.value.length === 0 ? (
          <EmptyState title={t('You have not written anything up yet.')}>
            <p>{t('What you find on a walkaround will be listed here, with what was done about it.')}</p>
          </EmptyState>
        ) : (
          <ul className={styles.plainList}>
            {mine.value.map(({ writeUp, registration, zone, events, isMine, seenAgain }) => (
              <li key={writeUp.id}>
                <Card>
                  <div className={styles.marks}>
                    <SeverityOf writeUp={writeUp} />
                    <StateMark writeUp={writeUp} />
                  </div>
                  <h2>
                    <Link href={`/ramp/write-up/${writeUp.id}`} className={styles.cardLink}>
                      {registration}: {writeUp.title}
                    </Link>
                  </h2>
                  <p className={styles.soft}>
                    {writeUp.number}, {whereInWords(t, writeUp)}. {!isMine && <>{writeUp.reportedBy}, </>}
                    <Moment at={writeUp.openedAt} zone={zone} />
                  </p>
                  <p className={styles.said}>{writeUp.words}</p>
                  {seenAgain.map(({ id, at, words }) => (
                    <div key={id}>
                      <p className={styles.soft}>
                        <Say
                          text="You saw it again on <moment/>:"
                          parts={{ moment: <Moment at={at} zone={zone} /> }}
                        />
                      </p>
                      <p className={styles.said}>{words}</p>
                    </div>
                  ))}
                  <Events events={events} zone={zone} />
                </Card>
              </li>
            ))}
          </ul>
        )}
      </div>
    </Shell>
  );
}
