import { Say, useWords } from '#words';
import { type ReactNode } from 'react';
import { PaperLink } from '@/app/bench/paper-link';
import { certificateWords } from '@/app/bench/words';
import { Cite } from '@/app/_ui/cite';
import Link from '@/app/_ui/link';
import { DateText, HoursText, Moment } from '@/app/_ui/moment';
import { Tag } from '@/app/_ui/tag';
import { type RecordRow } from '@/lib/records/record-row';
import styles from './records.module.css';
import { keptInWords, KIND_WORDS, PART_WORDS } from './words';

/** One signed record: what it says, who signed, whether it stands as it was signed, and how long the law asks for it. */
export function RecordItem({ row, zone }: { row: RecordRow; zone: string }) {
  const t = useWords();
  return (
    <li className={styles.record}>
      <div className={styles.when}>
        <b>
          <DateText date={row.on} />
        </b>
        {row.ttisTenths !== null && (
          <span>
            <Say text="at <hoursText/>" parts={{ hoursText: <HoursText tenths={row.ttisTenths} /> }} />
          </span>
        )}
      </div>
      <div className={styles.body}>
        <p className={styles.kind}>
          {t(KIND_WORDS[row.kind])}
          {row.part !== 'aircraft' && `, ${PART_WORDS[row.part].toLowerCase()}`}
        </p>
        <h3 className={styles.title}>{row.title}</h3>
        {row.words && <p className={styles.words}>{row.words}</p>}
        {row.correctsWords && <p className={styles.words}>{row.correctsWords}</p>}
        {row.supersededWords && (
          <p>
            <Tag tone="grey" size="small">
              {t('Superseded')}
            </Tag>{' '}
            {row.supersededWords}
          </p>
        )}
        <p className={styles.signed}>
          {row.certificate ? (
            <>
              <Say
                text="Signed by <b>{by}</b>, {certificate} {number},"
                parts={{ b: <b /> }}
                values={{
                  by: row.by,
                  certificate: certificateWords(t, row.certificate.kind),
                  number: row.certificate.number,
                }}
              />{' '}
            </>
          ) : (
            <>
              <Say text="By <b>{by}</b>," parts={{ b: <b /> }} values={{ by: row.by }} />{' '}
            </>
          )}
          <Moment at={row.at} zone={zone} />
        </p>
        <Standing row={row} />
        <p className={styles.kept}>
          {keptInWords(t, row.retention)} <Cite cite={row.retention.cite} plain />
        </p>
        <p className={`${styles.links} not-on-paper`}>
          <About row={row} />
          <Paper row={row} />
        </p>
      </div>
    </li>
  );
}

/** Unchanged or not is a word with a shape, and its hash beside it. */
function Standing({ row: { changes, hash } }: { row: RecordRow }): ReactNode {
  const t = useWords();
  if (changes === null) {
    return (
      <p className={styles.kept}>{t('Carried over or recorded without a signature of its own here.')}</p>
    );
  }
  return (
    <div className={styles.standing}>
      {changes.length === 0 ? (
        <Tag tone="green" shape="tick" size="small">
          {t('Unchanged since it was signed')}
        </Tag>
      ) : (
        <>
          <Tag tone="red" size="small">
            {t('Not as it was signed')}
          </Tag>
          <ul>
            {changes.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </>
      )}
      {hash && (
        <code className={styles.hash} title={hash}>
          <span className="out-of-sight">{t('hash')} </span>
          {hash.slice(0, 16)}
        </code>
      )}
    </div>
  );
}

const PAGES = {
  'write-up': '/bench/write-up',
  inspection: '/bench/inspection',
  permit: '/bench/permit',
} as const;

function About({ row: { about } }: { row: RecordRow }) {
  return about && <Link href={`${PAGES[about.kind]}/${about.id}`}>{about.label}</Link>;
}

function Paper({ row: { paper, title } }: { row: RecordRow }) {
  const t = useWords();
  if (!paper) return null;
  const href = {
    entry: `/api/papers/entry?work=${paper.id}`,
    inspection: `/api/papers/inspection?id=${paper.id}`,
    list: `/api/papers/list?id=${paper.id}`,
  }[paper.kind];
  const words = { entry: t('Entry to print'), inspection: t('Entries to print'), list: t('List to print') }[
    paper.kind
  ];
  return (
    <PaperLink href={href}>
      {words}
      <span className="out-of-sight">: {title}</span>
    </PaperLink>
  );
}
