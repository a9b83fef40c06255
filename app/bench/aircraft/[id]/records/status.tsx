import { type ReactNode } from 'react';
import { PaperLink } from '@/app/bench/paper-link';
import { Cite } from '@/app/_ui/cite';
import { DateText, HoursText } from '@/app/_ui/moment';
import { Card, Section } from '@/app/_ui/page';
import { dueInWords } from '@/lib/fleet/board-columns';
import { type StatusLine, type StatusSheet } from '@/lib/records/status-sheet';
import styles from './records.module.css';

/** 91.417(a)(2): what is kept and goes with the aircraft, paragraph by paragraph. */
export function Status({ status }: { status: StatusSheet }) {
  return (
    <Section title="Status, 14 CFR 91.417(a)(2)" id="status">
      <Card>
        <Part title="Total time in service" cite="14cfr91.417(a)(2)(i)">
          <p>
            Airframe: <HoursText tenths={status.ttisTenths} />.{' '}
            {status.engines > 0 && 'Engine and propeller: not kept here. See their own logbooks.'}
          </p>
        </Part>
        <Part title="Life-limited parts" cite="14cfr91.417(a)(2)(ii)">
          <Lines lines={status.lifeLimits} none="No life limit is entered." />
        </Part>
        <Part title="Since overhaul, and maker’s intervals" cite="14cfr91.417(a)(2)(iii)">
          <Lines lines={status.intervals} none="No overhaul and no maker’s interval is entered." />
        </Part>
        <Part title="Inspections and tests" cite="14cfr91.417(a)(2)(iv)">
          <Lines lines={status.inspections} none="No inspection is entered." />
        </Part>
        <Part title="Airworthiness directives" cite="14cfr91.417(a)(2)(v)">
          <p>
            {status.directivesReviewedOn ? (
              <>
                Gone through on <DateText date={status.directivesReviewedOn} />.
              </>
            ) : (
              'Nobody has gone through the directives that apply.'
            )}
          </p>
          <Lines lines={status.directives} none="No recurring directive is entered." directive />
          {status.namedDirectives.length > 0 && (
            <ul className={styles.lines}>
              {status.namedDirectives.map(({ id, number, title }) => (
                <li key={id}>
                  <b>{number}</b> {title}
                </li>
              ))}
            </ul>
          )}
        </Part>
        <Part title="Form 337" cite="14cfr91.417(a)(2)(vi)">
          {status.forms337.length === 0 ? (
            <p>No major repair or major alteration has been signed here.</p>
          ) : (
            <ul className={styles.lines}>
              {status.forms337.map(({ workId, title, on, form }) => (
                <li key={workId}>
                  <b>{title}</b>
                  {on && (
                    <>
                      , <DateText date={on} />
                    </>
                  )}
                  : {form ?? 'form not stated'}{' '}
                  <PaperLink href={`/api/papers/entry?work=${workId}`}>Entry</PaperLink>
                </li>
              ))}
            </ul>
          )}
        </Part>
      </Card>
    </Section>
  );
}

function Part({ title, cite, children }: { title: string; cite: string; children: ReactNode }) {
  return (
    <div className={styles.part}>
      <h3>
        {title} <Cite cite={cite} plain />
      </h3>
      {children}
    </div>
  );
}

function Lines(props: { lines: readonly StatusLine[]; none: string; directive?: boolean }) {
  if (props.lines.length === 0) return <p>{props.none}</p>;
  return (
    <ul className={styles.lines}>
      {props.lines.map((line) => (
        <li key={line.id}>
          <b>
            {line.name}
            {line.reference && ` (${line.reference})`}
          </b>
          {!line.binding && ' recommended, not binding.'} <Last line={line} /> <Next line={line} />
          {props.directive && (
            <>
              {' '}
              Method: {line.method ?? 'not stated'}. Revision: {line.revision ?? 'not stated'}.
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

function Last({ line: { lastOn, lastTenths, sinceTenths } }: { line: StatusLine }) {
  if (lastOn === null) return <>Last: not known.</>;
  return (
    <>
      Last <DateText date={lastOn} /> at <HoursText tenths={lastTenths} />
      {sinceTenths !== null && (
        <>
          , <HoursText tenths={sinceTenths} /> since
        </>
      )}
      .
    </>
  );
}

function Next({ line }: { line: StatusLine }) {
  if (line.missing !== null) return <b>Next: not known, for want of {line.missing}.</b>;
  if (line.dueOn === null && line.dueTenths === null) return <>Next: no limit is set.</>;
  return (
    <>
      Next{' '}
      {line.dueOn && (
        <>
          through <DateText date={line.dueOn} />
        </>
      )}
      {line.dueOn && line.dueTenths !== null && ' or '}
      {line.dueTenths !== null && (
        <>
          until <HoursText tenths={line.dueTenths} />
        </>
      )}
      : {dueInWords(line)}.
    </>
  );
}
