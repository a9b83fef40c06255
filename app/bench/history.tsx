import { English, Say, useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { type ReactNode } from 'react';
import { type WriteUpView } from '@/lib/determinations/read-write-up';
import { DateText, dateInWords, Moment } from '../_ui/moment';
import { Tag } from '../_ui/tag';
import styles from './history.module.css';
import {
  basisWords,
  certificateWords,
  closedWords,
  determinationWords,
  endWords,
  methodWords,
} from './words';

interface Event {
  readonly key: string;
  readonly at: string;
  readonly what: ReactNode;
  readonly more: ReactNode;
}

/** Everything that was ever said and signed about a write-up, oldest first. Nothing that was superseded is left out. */
export function History({ view }: { view: WriteUpView }) {
  const t = useWords();
  const events = [
    reported(t, view),
    ...view.determinations.map((one) => determined(t, one)),
    ...deferralsBegun(t, view),
    ...intervalsExtended(t, view),
    ...view.work.flatMap((work) => workEvents(t, work)),
    ...deferralsEnded(t, view),
    ...closed(t, view),
  ].toSorted((a, b) => a.at.localeCompare(b.at));
  return (
    <ol className={styles.history}>
      {events.map((event) => (
        <li key={event.key} className={styles.event}>
          <span className={styles.at}>
            <Moment at={event.at} zone={view.zone} />
          </span>
          <div className={styles.body}>
            <p className={styles.what}>{event.what}</p>
            {event.more}
          </div>
        </li>
      ))}
    </ol>
  );
}

const reported = (t: Translate, { summary }: WriteUpView): Event => ({
  key: 'reported',
  at: summary.openedAt,
  what: t('Written up by {reportedBy}', { reportedBy: summary.reportedBy }),
  more: null,
});

function determined(t: Translate, entry: WriteUpView['determinations'][number]): Event {
  return {
    key: entry.id,
    at: entry.at,
    what: (
      <>
        {t('{determination} by {by}', { determination: determinationWords(t, entry.kind), by: entry.by })}{' '}
        {entry.superseded && (
          <Tag tone="grey" size="small">
            {t('Superseded')}
          </Tag>
        )}
      </>
    ),
    more: (
      <>
        {entry.onPaper && (
          <p>
            {t('Carried over from {document}, vouched for by {by}. On paper: {day}.', {
              document: entry.onPaper.document,
              by: entry.onPaper.vouchedBy,
              day: entry.onPaper.on ? dateInWords(entry.onPaper.on) : t('the day is not known'),
            })}
          </p>
        )}
        <p>
          <English>{entry.statement}</English>
        </p>
        {entry.measured && (
          <p>
            <Say
              text="Measured {measured}; limit {limitText} ({limitSource})."
              values={{
                measured: entry.measured,
                limitText: entry.limitText,
                limitSource: entry.limitSource,
              }}
            />
          </p>
        )}
        <Signed
          kind={certificateWords(t, entry.certificateKind)}
          number={entry.certificateNumber}
          hash={entry.hash}
        />
      </>
    ),
  };
}

function deferralsBegun(t: Translate, view: WriteUpView): readonly Event[] {
  return [...view.pastDeferrals, ...(view.deferral ? [view.deferral] : [])].map((deferral) => ({
    key: `${deferral.id}-begun`,
    at: deferral.begunAt,
    what: t('Deferred under {basis}', { basis: basisWords(t, deferral.basis) }),
    more: (
      <p>
        {methodWords(t, deferral.method)}: {deferral.methodWords}
      </p>
    ),
  }));
}

function intervalsExtended(t: Translate, view: WriteUpView): readonly Event[] {
  return [...view.pastDeferrals, ...(view.deferral ? [view.deferral] : [])].flatMap(({ id, extension }) =>
    extension
      ? [
          {
            key: `${id}-extended`,
            at: extension.at,
            what: t('Repair interval extended by {by}', { by: extension.by }),
            more: (
              <>
                <p>
                  {t('Through')} <DateText date={extension.until} />
                  {t(', on the authority of {authority}. {reason}', {
                    authority: extension.authority,
                    reason: extension.reason,
                  })}
                </p>
                <p className={styles.signed}>
                  <Say
                    text="Signed · <code><span>hash </span>{hash}</code>"
                    parts={{ code: <code title={extension.hash} />, span: <span className="out-of-sight" /> }}
                    values={{ hash: extension.hash.slice(0, 12) }}
                  />
                </p>
              </>
            ),
          },
        ]
      : [],
  );
}

function deferralsEnded(t: Translate, view: WriteUpView): readonly Event[] {
  return view.pastDeferrals.map((deferral) => ({
    key: `${deferral.id}-ended`,
    at: deferral.endedAt,
    what: t('Deferral {end}, by {endedBy}', { end: endWords(t, deferral.how), endedBy: deferral.endedBy }),
    more: <p>{deferral.words}</p>,
  }));
}

function workEvents(t: Translate, work: WriteUpView['work'][number]): readonly Event[] {
  const begun: Event = {
    key: `${work.id}-begun`,
    at: work.startedAt,
    what: t('Work begun by {startedBy}', { startedBy: work.startedBy }),
    more: (
      <p>
        {work.entry.title}
        {work.state === 'abandoned' &&
          t('. Given up. {description}', { description: work.entry.description ?? '' })}
      </p>
    ),
  };
  const { signOff, checkFlight, corrects, supersededBy } = work;
  // A correction is of work begun long before; what is signed of it says why.
  const before = corrects ? [] : [begun];
  if (!signOff) return before;
  const signed: Event = {
    key: `${work.id}-signed`,
    at: signOff.at,
    what: (
      <>
        {corrects ? t('Entry corrected and signed by') : t('Approved for return to service by')} {signOff.by}{' '}
        {supersededBy && (
          <Tag tone="grey" size="small">
            {t('Superseded')}
          </Tag>
        )}
      </>
    ),
    more: (
      <>
        <p>{work.entry.title}</p>
        {corrects && <p>{t('Why: {why}', { why: corrects.why })}</p>}
        {supersededBy && (
          <p>
            {t('Superseded by the entry {by} signed: {why}', { by: supersededBy.by, why: supersededBy.why })}
          </p>
        )}
        <p>
          <English>{signOff.statement}</English>
        </p>
        <Signed
          kind={certificateWords(t, signOff.certificateKind)}
          number={signOff.certificateNumber}
          hash={signOff.hash}
        />
        {checkFlight && (
          <p>
            <Say
              text="Check flight flown by {by}{flownOn}: {words}"
              values={{
                by: checkFlight.by,
                flownOn: checkFlight.flownOn && (
                  <>
                    {' '}
                    {t('on')} <DateText date={checkFlight.flownOn} />
                  </>
                ),
                words: checkFlight.words,
              }}
            />
          </p>
        )}
      </>
    ),
  };
  return [...before, signed];
}

function closed(t: Translate, { summary }: WriteUpView): readonly Event[] {
  if (!summary.closedAt || !summary.closedHow) return [];
  return [
    {
      key: 'closed',
      at: summary.closedAt,
      what: t('Closed: {closed}', { closed: closedWords(t, summary.closedHow) }),
      more: null,
    },
  ];
}

/** Certificate and the first letters of the hash that binds signature and content; the whole hash on demand. */
function Signed({ kind, number, hash }: { kind: string; number: string; hash: string }) {
  return (
    <p className={styles.signed}>
      <Say
        text="Signed under {kind} {which} · <code><span>hash </span>{hash}</code>"
        parts={{ code: <code title={hash} />, span: <span className="out-of-sight" /> }}
        values={{ kind, which: number === 'none' ? '' : number, hash: hash.slice(0, 12) }}
      />
    </p>
  );
}
