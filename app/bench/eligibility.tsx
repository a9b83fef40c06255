import { type EligibilityReport, type EligibilityRow } from '@/lib/rules/part-91/91-213-deferral-eligibility';
import { type Question } from '@/lib/rules/part-91/91-213-questions';
import { type StepOwed } from '@/lib/rules/part-91/91-213-steps';
import { operationId, operationName } from '@/lib/rules/operations';
import { Caution } from '../_ui/caution';
import { Cite } from '../_ui/cite';
import { DateText } from '../_ui/moment';
import { Card } from '../_ui/page';
import { Tag } from '../_ui/tag';
import { VerdictLines } from '../_ui/verdict-lines';
import styles from './eligibility.module.css';

/** 91.213 as it reads for this write-up: the questions, what is left for each kind of flight, the steps, the end. */
export function Eligibility({ report }: { report: EligibilityReport }) {
  if (report.path === 'not-equipment') {
    return (
      <Card edge="red">
        <p className={styles.plainAnswer}>
          Not equipment that does not work: it is repaired, or found within limits by a mechanic. 91.213 does
          not cover it.
        </p>
        <VerdictLines lines={report.gate} />
      </Card>
    );
  }
  return (
    <div className={styles.eligibility}>
      <p className={styles.plainAnswer}>{WAY[report.path]}</p>
      <div>
        <h3 className={styles.head}>As the section asks</h3>
        <ol className={styles.tree}>
          {report.tree.map((question, index) => (
            <QuestionRow key={`${index}-${question.cite}`} question={question} />
          ))}
        </ol>
      </div>
      <KindsOfFlight table={report.table} />
      {report.stepsOwed.length > 0 && (
        <div>
          <h3 className={styles.head}>Steps</h3>
          <ul className={styles.steps}>
            {report.stepsOwed.map((step) => (
              <StepRow key={step.id} step={step} />
            ))}
          </ul>
        </div>
      )}
      {report.ends.length > 0 && (
        <div>
          <h3 className={styles.head}>When the deferral ends</h3>
          <ul className={styles.steps}>
            {report.ends.map((end) => (
              <li key={end.cite} className={styles.step}>
                <span className={styles.when}>{end.on ? <DateText date={end.on} /> : 'No date'}</span>
                <div>
                  <p>{end.text}</p>
                  <Cite cite={end.cite} />
                </div>
              </li>
            ))}
          </ul>
        </div>
      )}
      <Caution form="long" />
    </div>
  );
}

const WAY: Record<Exclude<EligibilityReport['path'], 'not-equipment'>, string> = {
  mel: 'The way is the minimum equipment list; paragraph (d) is closed to this aircraft.',
  'paragraph-d':
    'The way is paragraph (d): no minimum equipment list, and the aircraft is of a class it covers.',
  closed: 'No way through 91.213 stands open. It is repaired.',
};

const ANSWERS = {
  yes: { word: 'Yes', shape: 'tick' },
  no: { word: 'No', shape: 'dot' },
  unknown: { word: 'Not known', shape: 'question' },
  depends: { word: 'Depends', shape: 'ring' },
} as const;

/** Red where the answer closes the way; an answer that leaves it open has no colour of its own. */
function QuestionRow({ question }: { question: Question }) {
  const { word, shape } = ANSWERS[question.answer];
  const tone = question.answer === 'depends' ? 'amber' : question.stops ? 'red' : 'grey';
  return (
    <li className={styles.question}>
      <span>
        <Tag tone={tone} shape={question.stops ? 'block' : shape} size="small">
          {word}
        </Tag>
      </span>
      <div>
        <p className={styles.asked}>{question.question}</p>
        <p>{question.because}</p>
        <Cite cite={question.cite} />
      </div>
    </li>
  );
}

/** One row a kind of operation; the reasons unfold under it. */
function KindsOfFlight({ table }: { table: readonly EligibilityRow[] }) {
  return (
    <div>
      <h3 className={styles.head} id="kinds-of-flight">
        Kinds of flight with it deferred
      </h3>
      <table className={styles.kinds} aria-labelledby="kinds-of-flight">
        <thead>
          <tr>
            <th scope="col">Kind of flight</th>
            <th scope="col">Deferral</th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {table.map((row) => (
            <tr key={operationId(row.kind)}>
              <th scope="row">{operationName(row.kind)}</th>
              <td>
                <AllowedMark row={row} />
              </td>
              <td>
                <Reasons row={row} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function AllowedMark({ row }: { row: EligibilityRow }) {
  if (!row.allowed) {
    return (
      <Tag tone="red" shape="block" size="small">
        Barred
      </Tag>
    );
  }
  return row.lines.some((line) => line.effect === 'limits') ? (
    <Tag tone="amber" shape="wedge" size="small">
      Allowed with limits
    </Tag>
  ) : (
    <Tag tone="green" shape="disc" size="small">
      Allowed
    </Tag>
  );
}

/** The line that decides stands in sight, all lines one press away. */
function Reasons({ row }: { row: EligibilityRow }) {
  const deciding =
    row.lines.find((line) => line.effect === 'bars') ??
    row.lines.find((line) => line.effect === 'limits') ??
    row.lines.at(-1);
  if (!deciding) return <>Nothing was looked at.</>;
  return (
    <details className={styles.reasons}>
      <summary>
        <span className={styles.first}>{deciding.because}</span>
        <Cite cite={deciding.cite} plain />
      </summary>
      <VerdictLines lines={row.lines} />
    </details>
  );
}

function StepRow({ step }: { step: StepOwed }) {
  return (
    <li className={styles.step}>
      <span>
        {step.done ? (
          <Tag tone="grey" shape="tick" size="small">
            Done
          </Tag>
        ) : (
          <Tag tone="amber" shape="wedge" size="small">
            Owed
          </Tag>
        )}
      </span>
      <div>
        <p>{step.text}</p>
        <Cite cite={step.cite} />
      </div>
    </li>
  );
}
