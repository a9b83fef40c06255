import { Say, useWords } from '#words';
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
  const t = useWords();
  return (
    <Section title={t('Status, 14 CFR 91.417(a)(2)')} id="status">
      <Card>
        <Part title={t('Total time in service')} cite="14cfr91.417(a)(2)(i)">
          <p>
            <Say
              text="Airframe: <hoursText/>."
              parts={{ hoursText: <HoursText tenths={status.ttisTenths} /> }}
            />{' '}
            {status.engines > 0 && t('Engine and propeller: not kept here. See their own logbooks.')}
          </p>
        </Part>
        <Part title={t('Life-limited parts')} cite="14cfr91.417(a)(2)(ii)">
          <Lines lines={status.lifeLimits} none={t('No life limit is entered.')} />
        </Part>
        <Part title={t('Since overhaul, and maker’s intervals')} cite="14cfr91.417(a)(2)(iii)">
          <Lines lines={status.intervals} none={t('No overhaul and no maker’s interval is entered.')} />
        </Part>
        <Part title={t('Inspections and tests')} cite="14cfr91.417(a)(2)(iv)">
          <Lines lines={status.inspections} none={t('No inspection is entered.')} />
        </Part>
        <Part title={t('Airworthiness directives')} cite="14cfr91.417(a)(2)(v)">
          <p>
            {status.directivesReviewedOn ? (
              <>
                {t('Gone through on')} <DateText date={status.directivesReviewedOn} />.
              </>
            ) : (
              t('Nobody has gone through the directives that apply.')
            )}
          </p>
          <Lines lines={status.directives} none={t('No recurring directive is entered.')} directive />
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
        <Part title={t('Form 337')} cite="14cfr91.417(a)(2)(vi)">
          {status.forms337.length === 0 ? (
            <p>{t('No major repair or major alteration has been signed here.')}</p>
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
                  : {form ?? t('form not stated')}{' '}
                  <PaperLink href={`/api/papers/entry?work=${workId}`}>{t('Entry')}</PaperLink>
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
  const t = useWords();
  if (props.lines.length === 0) return <p>{props.none}</p>;
  return (
    <ul className={styles.lines}>
      {props.lines.map((line) => (
        <li key={line.id}>
          <b>
            {line.name}
            {line.reference && ` (${line.reference})`}
          </b>
          {!line.binding && t(' recommended, not binding.')} <Last line={line} /> <Next line={line} />
          {props.directive && (
            <>
              {' '}
              {t('Method: {method}. Revision: {revision}.', {
                method: line.method ?? t('not stated'),
                revision: line.revision ?? t('not stated'),
              })}
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

function Last({ line: { lastOn, lastTenths, sinceTenths, carriedOver } }: { line: StatusLine }) {
  const t = useWords();
  if (lastOn === null) return <>{t('Last: not known.')}</>;
  return (
    <>
      {t('Last')} <DateText date={lastOn} />{' '}
      <Say
        text="at <hoursText/>{sinceTenths}."
        parts={{ hoursText: <HoursText tenths={lastTenths} /> }}
        values={{
          sinceTenths: sinceTenths !== null && (
            <>
              <Say text=", <hoursText/> since" parts={{ hoursText: <HoursText tenths={sinceTenths} /> }} />
            </>
          ),
        }}
      />
      {carriedOver && ` ${t('Carried over from paper.')}`}
    </>
  );
}

function Next({ line }: { line: StatusLine }) {
  const t = useWords();
  if (line.missing !== null)
    return <b>{t('Next: not known, for want of {missing}.', { missing: line.missing })}</b>;
  if (line.dueOn === null && line.dueTenths === null) return <>{t('Next: no limit is set.')}</>;
  return (
    <>
      <Say
        text="Next {dueOn}{dueOn2}{dueTenths}: {due}."
        values={{
          dueOn: line.dueOn && (
            <>
              {t('through')} <DateText date={line.dueOn} />
            </>
          ),
          dueOn2: line.dueOn && line.dueTenths !== null && t(' or '),
          dueTenths: line.dueTenths !== null && (
            <>
              <Say text="until <hoursText/>" parts={{ hoursText: <HoursText tenths={line.dueTenths} /> }} />
            </>
          ),
          due: dueInWords(t, line),
        }}
      />
    </>
  );
}
