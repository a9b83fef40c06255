import { English, Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { type CiteId } from '@/lib/rules/law';
import { type EligibilityReport, type EligibilityRow } from '@/lib/rules/part-91/91-213-deferral-eligibility';
import { type Judgement } from '@/lib/rules/part-91/91-213-judgements';
import { type Question } from '@/lib/rules/part-91/91-213-questions';
import { type StepOwed } from '@/lib/rules/part-91/91-213-steps';
import { operationId, operationName } from '@/lib/rules/operations';
import { Caution } from '../_ui/caution';
import { Cite } from '../_ui/cite';
import Link from '../_ui/link';
import { DateText } from '../_ui/moment';
import { Card } from '../_ui/page';
import { Tag } from '../_ui/tag';
import { VerdictLines } from '../_ui/verdict-lines';
import styles from './eligibility.module.css';
import { ListEntryPanel } from './list-entry-panel';

/** 91.213 as it reads for this write-up: the questions, what is left for each kind of flight, the steps, the end. */
export function Eligibility({ report }: { report: EligibilityReport }) {
  const t = useWords();
  if (report.path === 'not-equipment') {
    return (
      <Card edge="red">
        <p className={styles.plainAnswer}>
          {t(
            'Not equipment that does not work: it is repaired, or found within limits by a mechanic. 91.213 does not cover it.',
          )}
        </p>
        <VerdictLines lines={report.gate} />
        <p>
          <Say
            text="If something also does not work because of it: make the damage safe first, by repair or approved removal with its records. Then <a>judge it anew</a> as inoperative, or write up what does not work by itself; 91.213 is asked of that. A reading, no paragraph says so."
            parts={{ a: <Link href="#acts" /> }}
          />
        </p>
      </Card>
    );
  }
  const [first, ...others] = report.judgements;
  return (
    <div className={styles.eligibility}>
      <p className={styles.plainAnswer}>{wayInWords(t, report.path, report.tree)}</p>
      <div>
        <h3 className={styles.head}>{t('As the section asks')}</h3>
        <ol className={styles.tree}>
          {first && <JudgementRow judgement={first} />}
          {questionsBeforeSteps(report).map((question, index) => (
            <QuestionRow key={`${index}-${question.cite}`} question={question} />
          ))}
          {others.map((judgement) => (
            <JudgementRow key={judgement.id} judgement={judgement} />
          ))}
        </ol>
      </div>
      {report.listEntry && <ListEntryPanel entry={report.listEntry} />}
      {report.path === 'closed' ? (
        <details>
          <summary className={styles.fold}>{t('Barred for any flight: the eight kinds one by one')}</summary>
          <KindsOfFlight table={report.table} path={report.path} />
        </details>
      ) : (
        <KindsOfFlight table={report.table} path={report.path} />
      )}
      {report.stepsOwed.length > 0 && (
        <div>
          <h3 className={styles.head}>{t('Steps')}</h3>
          <ul className={styles.steps}>
            {report.stepsOwed.map((step) => (
              <StepRow key={step.id} step={step} />
            ))}
          </ul>
        </div>
      )}
      {report.ends.length > 0 && (
        <div>
          <h3 className={styles.head}>{t('When the deferral ends')}</h3>
          <ul className={styles.steps}>
            {report.ends.map((end) => (
              <li key={end.cite} className={styles.step}>
                <span className={styles.when}>{end.on ? <DateText date={end.on} /> : t('No date')}</span>
                <div>
                  <p>{end.text}</p>
                </div>
                <Cite cite={end.cite} />
              </li>
            ))}
          </ul>
        </div>
      )}
      <Caution form="long" />
    </div>
  );
}

/** The steps end the tree; they stand below with what is done and owed, so here they are left to that list. */
const questionsBeforeSteps = ({ tree, stepsOwed }: EligibilityReport): readonly Question[] =>
  tree.slice(0, tree.length - stepsOwed.length);

type Way = Exclude<EligibilityReport['path'], 'not-equipment'>;

/** A way closed only because something is not known can open again: somebody has to find it out. */
function wayInWords(t: Translate, path: Way, tree: readonly Question[]): string {
  const open = path === 'closed' && tree.some((question) => question.answer === 'unknown');
  return open
    ? t('Not answered: something is not known. Until it is, this is repaired and not deferred.')
    : t(WAY[path]);
}

const WAY: Record<Way, string> = {
  mel: said('The way is the minimum equipment list; paragraph (d) is closed to this aircraft.'),
  'paragraph-d': said(
    'The way is paragraph (d): no minimum equipment list, and the aircraft is of a class it covers.',
  ),
  closed: said('No way through 91.213 stands open. It is repaired.'),
};

const ANSWERS = {
  yes: { word: said('Yes'), shape: 'tick' },
  no: { word: said('No'), shape: 'dot' },
  unknown: { word: said('Not known'), shape: 'question' },
  depends: { word: said('Depends'), shape: 'ring' },
} as const;

/** Red where the answer closes the way; an answer that leaves it open has no colour of its own. */
function QuestionRow({ question }: { question: Question }) {
  const t = useWords();
  const { word, shape } = ANSWERS[question.answer];
  const tone = question.answer === 'depends' ? 'amber' : question.stops ? 'red' : 'grey';
  return (
    <li className={styles.question}>
      <span>
        <Tag tone={tone} shape={question.stops ? 'block' : shape} size="small">
          {t(word)}
        </Tag>
      </span>
      <div>
        <p className={styles.asked}>{question.question}</p>
        <p>
          <English>{question.because}</English>
        </p>
      </div>
      <Cite cite={question.cite} />
    </li>
  );
}

/** What the section asks of a person: open until somebody answers it in the form and signs. */
function JudgementRow({ judgement }: { judgement: Judgement }) {
  const t = useWords();
  return (
    <li className={styles.question}>
      <span>
        <Tag tone="amber" shape="question" size="small">
          {t('For a person')}
        </Tag>
      </span>
      <div>
        <p className={styles.asked}>{judgement.question}</p>
        <p>
          <Say
            text="{look} Not answered yet: answered and signed under <a>Defer it</a>."
            parts={{ a: <Link href="#acts" /> }}
            values={{ look: judgement.look }}
          />
        </p>
      </div>
      <Cite cite={judgement.cite} />
    </li>
  );
}

/** One row a kind of operation; the reasons unfold under it. */
function KindsOfFlight({ table, path }: Pick<EligibilityReport, 'table' | 'path'>) {
  const t = useWords();
  return (
    <div>
      <h3 className={styles.head} id="kinds-of-flight">
        {t('Kinds of flight with it deferred')}
      </h3>
      <table className={styles.kinds} aria-labelledby="kinds-of-flight">
        <thead>
          <tr>
            <th scope="col">{t('Kind of flight')}</th>
            <th scope="col">{t('Deferral')}</th>
            <th scope="col">{t('Why')}</th>
          </tr>
        </thead>
        <tbody>
          {table.map((row) => (
            <tr key={operationId(row.kind)}>
              <th scope="row">{t(operationName(row.kind))}</th>
              <td>
                <AllowedMark row={row} />
              </td>
              <td>
                <Reasons row={row} path={path} />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function AllowedMark({ row }: { row: EligibilityRow }) {
  const t = useWords();
  if (!row.allowed) {
    return (
      <Tag tone="red" shape="block" size="small">
        {t('Barred')}
      </Tag>
    );
  }
  return row.lines.some((line) => line.effect === 'limits') ? (
    <Tag tone="amber" shape="wedge" size="small">
      {t('Allowed with limits')}
    </Tag>
  ) : (
    <Tag tone="green" shape="disc" size="small">
      {t('Allowed')}
    </Tag>
  );
}

/** The line that decides stands in sight, all lines one press away. */
function Reasons({ row, path }: { row: EligibilityRow; path: EligibilityReport['path'] }) {
  const t = useWords();
  const deciding =
    row.lines.find((line) => line.effect === 'bars') ?? row.lines.find((line) => line.effect === 'limits');
  return (
    <details className={styles.reasons}>
      <summary>
        <span className={styles.first}>{deciding?.because ?? t('Nothing bars it.')}</span>
        <Cite cite={deciding?.cite ?? ALLOWED_BY[path]} plain />
      </summary>
      <VerdictLines lines={row.lines} />
    </details>
  );
}

/** The paragraph a kind of flight is left open by, where no single line decides. */
const ALLOWED_BY: Record<EligibilityReport['path'], CiteId> = {
  mel: '14cfr91.213(a)(3)(ii)',
  'paragraph-d': '14cfr91.213(d)(2)',
  'not-equipment': '14cfr91.213(a)',
  closed: '14cfr91.213(a)',
};

function StepRow({ step }: { step: StepOwed }) {
  const t = useWords();
  return (
    <li className={styles.step}>
      <span>
        {step.done ? (
          <Tag tone="grey" shape="tick" size="small">
            {t('Done')}
          </Tag>
        ) : (
          <Tag tone="amber" shape="wedge" size="small">
            {t('Owed')}
          </Tag>
        )}
      </span>
      <div>
        <p>{step.text}</p>
      </div>
      <Cite cite={step.cite} />
    </li>
  );
}
