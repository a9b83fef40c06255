import { type ReactNode } from 'react';
import { type WriteUpView } from '@/lib/determinations/read-write-up';
import { DateText, Moment } from '../_ui/moment';
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
  const events = [
    reported(view),
    ...view.determinations.map(determined),
    ...deferralsBegun(view),
    ...intervalsExtended(view),
    ...view.work.flatMap((work) => workEvents(work)),
    ...deferralsEnded(view),
    ...closed(view),
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

const reported = ({ summary }: WriteUpView): Event => ({
  key: 'reported',
  at: summary.openedAt,
  what: `Written up by ${summary.reportedBy}`,
  more: null,
});

function determined(entry: WriteUpView['determinations'][number]): Event {
  return {
    key: entry.id,
    at: entry.at,
    what: (
      <>
        {determinationWords(entry.kind)} by {entry.by}{' '}
        {entry.superseded && (
          <Tag tone="grey" size="small">
            Superseded
          </Tag>
        )}
      </>
    ),
    more: (
      <>
        <p>{entry.statement}</p>
        {entry.measured && (
          <p>
            Measured {entry.measured}; limit {entry.limitText} ({entry.limitSource}).
          </p>
        )}
        <Signed
          kind={certificateWords(entry.certificateKind)}
          number={entry.certificateNumber}
          hash={entry.hash}
        />
      </>
    ),
  };
}

function deferralsBegun(view: WriteUpView): readonly Event[] {
  return [...view.pastDeferrals, ...(view.deferral ? [view.deferral] : [])].map((deferral) => ({
    key: `${deferral.id}-begun`,
    at: deferral.begunAt,
    what: `Deferred under ${basisWords(deferral.basis)}`,
    more: (
      <p>
        {methodWords(deferral.method)}: {deferral.methodWords}
      </p>
    ),
  }));
}

function intervalsExtended(view: WriteUpView): readonly Event[] {
  return [...view.pastDeferrals, ...(view.deferral ? [view.deferral] : [])].flatMap(({ id, extension }) =>
    extension
      ? [
          {
            key: `${id}-extended`,
            at: extension.at,
            what: `Repair interval extended by ${extension.by}`,
            more: (
              <>
                <p>
                  Through <DateText date={extension.until} />, on the authority of {extension.authority}.{' '}
                  {extension.reason}
                </p>
                <p className={styles.signed}>
                  Signed ·{' '}
                  <code title={extension.hash}>
                    <span className="out-of-sight">hash </span>
                    {extension.hash.slice(0, 12)}
                  </code>
                </p>
              </>
            ),
          },
        ]
      : [],
  );
}

function deferralsEnded(view: WriteUpView): readonly Event[] {
  return view.pastDeferrals.map((deferral) => ({
    key: `${deferral.id}-ended`,
    at: deferral.endedAt,
    what: `Deferral ${endWords(deferral.how)}, by ${deferral.endedBy}`,
    more: <p>{deferral.words}</p>,
  }));
}

function workEvents(work: WriteUpView['work'][number]): readonly Event[] {
  const begun: Event = {
    key: `${work.id}-begun`,
    at: work.startedAt,
    what: `Work begun by ${work.startedBy}`,
    more: (
      <p>
        {work.entry.title}
        {work.state === 'abandoned' && `. Given up. ${work.entry.description ?? ''}`}
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
        {corrects ? 'Entry corrected and signed by' : 'Approved for return to service by'} {signOff.by}{' '}
        {supersededBy && (
          <Tag tone="grey" size="small">
            Superseded
          </Tag>
        )}
      </>
    ),
    more: (
      <>
        <p>{work.entry.title}</p>
        {corrects && <p>Why: {corrects.why}</p>}
        {supersededBy && (
          <p>
            Superseded by the entry {supersededBy.by} signed: {supersededBy.why}
          </p>
        )}
        <p>{signOff.statement}</p>
        <Signed
          kind={certificateWords(signOff.certificateKind)}
          number={signOff.certificateNumber}
          hash={signOff.hash}
        />
        {checkFlight && (
          <p>
            Check flight flown by {checkFlight.by}
            {checkFlight.flownOn && (
              <>
                {' '}
                on <DateText date={checkFlight.flownOn} />
              </>
            )}
            : {checkFlight.words}
          </p>
        )}
      </>
    ),
  };
  return [...before, signed];
}

function closed({ summary }: WriteUpView): readonly Event[] {
  if (!summary.closedAt || !summary.closedHow) return [];
  return [
    { key: 'closed', at: summary.closedAt, what: `Closed: ${closedWords(summary.closedHow)}`, more: null },
  ];
}

/** Certificate and the first letters of the hash that binds signature and content; the whole hash on demand. */
function Signed({ kind, number, hash }: { kind: string; number: string; hash: string }) {
  return (
    <p className={styles.signed}>
      Signed under {kind} {number === 'none' ? '' : number} ·{' '}
      <code title={hash}>
        <span className="out-of-sight">hash </span>
        {hash.slice(0, 12)}
      </code>
    </p>
  );
}
