import { English, Say, useWords } from '#words';
import { type ReactNode } from 'react';
import { type Role } from '@/lib/access/policy';
import { type WriteUpView } from '@/lib/determinations/read-write-up';
import { actsOnWork, type WorkAct } from '@/lib/work/acts-open';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { RETURN_TO_SERVICE_STATEMENT } from '@/lib/work/sign-work';
import { testInWords } from '@/lib/work/tests-owed';
import { type WorkView } from '@/lib/work/work-view';
import { Cite } from '../_ui/cite';
import { Moment } from '../_ui/moment';
import { Card } from '../_ui/page';
import { Tag, type Tone } from '../_ui/tag';
import { Act, ActList } from './acts';
import { EntryFacts } from './entry-facts';
import { CheckFlightForm } from './forms/check-flight-form';
import { CorrectForm } from './forms/correct-form';
import { EnterForm } from './forms/enter-form';
import { GiveUpForm } from './forms/give-up-form';
import { SignForm } from './forms/sign-form';
import { StartTestForm } from './forms/start-test-form';
import { PaperLink } from './paper-link';
import { type PreventiveChoice } from './preventive-choices';
import { RulingNotice } from './ruling-notice';
import styles from './work-part.module.css';
import { partWords, workKindWords, workStateWords } from './words';

/** What of the page around it a piece of work needs: a write-up has it, and so has something that recurs. */
interface AroundWork {
  readonly zone: string;
  readonly me: { readonly name: string };
  readonly summary: Pick<WriteUpView['summary'], 'placards'>;
  /** The kind of requirement the work answers. */
  readonly recurs?: RequirementKind;
}

interface WorkPartProps {
  readonly view: AroundWork;
  readonly work: WorkView;
  readonly roles: readonly Role[];
  readonly items: readonly PreventiveChoice[];
}

/** One piece of work: where it stands, and what can be done next about it. */
export function WorkPart({ view, work, roles, items }: WorkPartProps) {
  const t = useWords();
  const acts = actsOnWork(work, roles);
  const underWay = work.mySignature !== null;
  const made: Record<WorkAct, () => ReactNode> = {
    enter: () => (
      <Act
        key="enter"
        title={work.state === 'entered' ? t('Change the entry') : t('Write the entry')}
        hint={t('What 14 CFR 43.9(a) asks for.')}
      >
        <EnterForm work={work} recurs={view.recurs} />
      </Act>
    ),
    sign: () => <SignAct key="sign" view={view} work={work} items={items} />,
    'give-up': () => (
      <Act
        key="give-up"
        title={work.corrects ? t('Give up the correction') : t('Give up the work')}
        hint={
          work.corrects
            ? t('The entry it would have corrected stands.')
            : t('Only when nothing was done. The write-up stays open.')
        }
      >
        <GiveUpForm workId={work.id} correction={work.corrects !== null} />
      </Act>
    ),
    'check-flight': () => (
      <Act
        key="check-flight"
        title={t('Log the check flight')}
        hint={t('Owed before anybody is carried: 91.407(b).')}
      >
        <p>{work.entry.checkFlightReason}</p>
        <CheckFlightForm workId={work.id} signer={view.me.name} />
      </Act>
    ),
    'start-test': () => (
      <Act
        key="start-test"
        title={t('Start an owed test')}
        hint={t('Until it is signed the aircraft does not fly; then the limit is gone.')}
      >
        {work.owes.tests.map((test) => (
          <StartTestForm key={test} workId={work.id} test={test} />
        ))}
      </Act>
    ),
    correct: () => (
      <Act
        key="correct"
        title={t('Correct the entry')}
        hint={t('By a new signed entry beside it, with your reason.')}
      >
        <CorrectForm workId={work.id} />
      </Act>
    ),
  };
  return (
    <Card edge={underWay ? 'amber' : undefined}>
      <div className={styles.head}>
        <h3>{work.entry.title}</h3>
        <Tag tone={toneOf(work)} size="small">
          {workStateWords(t, work.state)}
        </Tag>
      </div>
      <p className={styles.soft}>
        {t('{workKind}, {part}, begun by {startedBy}', {
          workKind: workKindWords(t, work.entry.workKind),
          part: partWords(t, work.entry.part).toLowerCase(),
          startedBy: work.startedBy,
        })}
        {work.forDeferral && t('. The record of the deferral: it stays deferred after the signature.')}
      </p>
      <Standing view={view} work={work} />
      {work.state === 'entered' && (
        <details>
          <summary className={styles.fold}>{t('The entry as it stands')}</summary>
          <EntryFacts entry={work.entry} items={items} />
        </details>
      )}
      {work.state === 'signed' && (
        <details>
          <summary className={styles.fold}>{t('The entry as signed')}</summary>
          <EntryFacts entry={work.entry} items={items} signedBy={work.signOff} />
          <PaperLink href={`/api/papers/entry?work=${work.id}`}>{t('Logbook entry')}</PaperLink>
        </details>
      )}
      {acts.length > 0 && <ActList>{acts.map((act) => made[act]())}</ActList>}
    </Card>
  );
}

/** How this work stands to others: what it corrects or was corrected by, the test it is, and what is owed after it. */
function Standing({ view, work }: { view: AroundWork; work: WorkView }) {
  const t = useWords();
  const { corrects, supersededBy, testFor, owes } = work;
  if (!corrects && !supersededBy && !testFor && owes.tests.length === 0 && !owes.checkFlight) return null;
  return (
    <ul className={styles.standing}>
      {supersededBy && (
        <li>
          <Tag tone="grey" size="small">
            {t('Superseded')}
          </Tag>{' '}
          <Say
            text="by the entry {by} signed on <moment/>: {why}"
            parts={{ moment: <Moment at={supersededBy.at} zone={view.zone} /> }}
            values={{ by: supersededBy.by, why: supersededBy.why }}
          />
        </li>
      )}
      {corrects && <li>{t('Corrects the entry signed before: {why}', { why: corrects.why })}</li>}
      {testFor && <li>{t('The test owed after “{title}”.', { title: testFor.title })}</li>}
      {owes.checkFlight && (
        <li>
          <Tag tone="amber" size="small">
            {t('Check flight owed')}
          </Tag>{' '}
          {work.entry.checkFlightReason} <Cite cite="14cfr91.407(b)" />
        </li>
      )}
      {owes.tests.map((test) => (
        <li key={test}>
          <Tag tone="amber" size="small">
            {t('Test owed')}
          </Tag>{' '}
          {t(testInWords(test))}
        </li>
      ))}
    </ul>
  );
}

/** Everything the signer is asked to sign, in sight above the signature. */
function SignAct({ view, work, items }: Omit<WorkPartProps, 'roles'>) {
  const t = useWords();
  const ruling = work.mySignature;
  if (!ruling) return null;
  const placardStands =
    !work.forDeferral &&
    !work.corrects &&
    !work.testFor &&
    view.summary.placards.some((placard) => placard.placed);
  return (
    <Act
      title={t('Sign off')}
      hint={ruling.allowed ? t('Approve for return to service.') : t('Not with your certificates.')}
    >
      <p>
        <Say
          text="This is the entry as you sign it. Your signature returns to service the <b>{part}</b>, for this work and nothing else."
          parts={{ b: <b /> }}
          values={{ part: partWords(t, work.entry.part).toLowerCase() }}
        />
      </p>
      <EntryFacts entry={work.entry} items={items} />
      <blockquote className={styles.statement}>
        <English>{RETURN_TO_SERVICE_STATEMENT}</English>
        <Cite cite="14cfr43.9(a)(4)" />
      </blockquote>
      <RulingNotice
        ruling={ruling}
        allowed={t('You sign under {kind}, {number}.', {
          kind: ruling.certificate?.kind ?? '',
          number: ruling.certificate?.number ?? '',
        })}
        refused={t('Your certificates do not allow this signature.')}
        whoCan={ruling.whoCan}
      />
      <SignForm
        workId={work.id}
        entryHash={work.entryHash}
        signer={view.me.name}
        placardStands={placardStands}
        doneBy={ruling.workerAsked ? work.entry.performedBy : null}
      />
    </Act>
  );
}

function toneOf({ state, owes, supersededBy }: WorkView): Tone {
  if (supersededBy) return 'grey';
  if (state === 'signed') return owes.checkFlight || owes.tests.length > 0 ? 'amber' : 'green';
  return state === 'abandoned' ? 'grey' : 'amber';
}
