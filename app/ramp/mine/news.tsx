import { useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type ActorRef } from '@/lib/access/actor';
import { readNotices, type NoticeView } from '@/lib/notices/read-notices';
import Link from '../../_ui/link';
import { Moment, momentInWords } from '../../_ui/moment';
import { Card } from '../../_ui/page';
import { ProblemNotice } from '../../_ui/problem-notice';
import rampStyles from '../_parts/ramp.module.css';
import styles from './news.module.css';
import { NewsSeen } from './news-seen';

const HEADING = 'news';

/**
 * Word of what was done about my write-ups and observations, and of what became of my released flights. News stays new until its reader says so: a page that only
 * opened, on a phone that went back into the pocket, has told nobody anything.
 */
export async function News({ actor }: { actor: ActorRef }) {
  const t = await words();
  const read = await readNotices(actor, {});
  if (!read.ok) return <ProblemNotice problem={read.problem} />;
  const { unread, unreadCount, earlier } = read.value;
  if (unread.length + earlier.length === 0) return null;
  return (
    <section className={styles.news} aria-labelledby={HEADING}>
      <h2 id={HEADING} tabIndex={-1}>
        {unreadCount === 0 ? t('No news') : t('News ({unreadCount})', { unreadCount })}
      </h2>
      {unread.length > 0 && (
        <>
          {unreadCount > unread.length && (
            <p className={rampStyles.soft}>
              {t('The newest {unread}; the others follow when these are seen.', { unread: unread.length })}
            </p>
          )}
          <NewsList notices={unread} edge="blue" />
          {/* With other news the form starts anew, with other ids. */}
          <NewsSeen key={unread[0]?.id} noticeIds={unread.map(({ id }) => id)} headingId={HEADING} />
        </>
      )}
      {earlier.length > 0 && (
        <details className={rampStyles.fold}>
          <summary>{t('Earlier news')}</summary>
          <NewsList notices={earlier} />
        </details>
      )}
    </section>
  );
}

function NewsList({ notices, edge }: { notices: readonly NoticeView[]; edge?: 'blue' }) {
  const t = useWords();
  return (
    <ul className={rampStyles.plainList}>
      {notices.map((notice) => (
        <li key={notice.id}>
          <Card edge={edge && (notice.what === 'release-void' ? 'red' : edge)}>
            <h3>
              <Link href={hrefOf(notice)} className={rampStyles.cardLink}>
                {aboutInWords(t, notice)}
              </Link>
            </h3>
            <p className={styles.done}>{notice.done}</p>
            <p className={rampStyles.said}>{notice.words}</p>
            <p className={rampStyles.soft}>
              {notice.byName}, <Moment at={notice.at} zone={notice.zone} />
            </p>
            <p>{notice.meaning}</p>
          </Card>
        </li>
      ))}
    </ul>
  );
}

/** A flight opens as a flight, also where a write-up stands behind the word. */
const hrefOf = ({ releaseId, discrepancyId }: NoticeView): string =>
  releaseId ? `/ramp/flight/${releaseId}` : `/ramp/write-up/${discrepancyId}`;

function aboutInWords(t: Translate, { registration, number, title, departs }: NoticeView): string {
  if (!departs) return `${registration}, ${number}: ${title}`;
  return t('Your flight with {registration}, {title}, {moment}', {
    registration,
    title,
    moment: momentInWords(departs.at, departs.zone),
  });
}
