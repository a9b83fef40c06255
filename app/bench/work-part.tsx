import { type ReactNode } from 'react';
import { type Role } from '@/lib/access/policy';
import { type WorkView, type WriteUpView } from '@/lib/determinations/read-write-up';
import { actsOnWork, type WorkAct } from '@/lib/work/acts-open';
import { RETURN_TO_SERVICE_STATEMENT } from '@/lib/work/sign-work';
import { Cite } from '../_ui/cite';
import { Card } from '../_ui/page';
import { Tag, type Tone } from '../_ui/tag';
import { Act, ActList } from './acts';
import { EntryFacts } from './entry-facts';
import { CheckFlightForm } from './forms/check-flight-form';
import { EnterForm } from './forms/enter-form';
import { GiveUpForm } from './forms/give-up-form';
import { SignForm } from './forms/sign-form';
import { type PreventiveChoice } from './preventive-choices';
import { RulingNotice } from './ruling-notice';
import styles from './work-part.module.css';
import { workKindWords, workStateWords } from './words';

interface WorkPartProps {
  readonly view: WriteUpView;
  readonly work: WorkView;
  readonly roles: readonly Role[];
  readonly items: readonly PreventiveChoice[];
}

/** One piece of work: where it stands, and what can be done next about it. */
export function WorkPart({ view, work, roles, items }: WorkPartProps) {
  const acts = actsOnWork(work, roles);
  const underWay = work.mySignature !== null;
  const made: Record<WorkAct, () => ReactNode> = {
    enter: () => (
      <Act
        key="enter"
        title={work.state === 'entered' ? 'Change the entry' : 'Write the entry'}
        hint="What 14 CFR 43.9(a) asks for."
      >
        <EnterForm workId={work.id} entry={work.entry} />
      </Act>
    ),
    sign: () => <SignAct key="sign" view={view} work={work} items={items} />,
    'give-up': () => (
      <Act key="give-up" title="Give up the work" hint="Only when nothing was done. The write-up stays open.">
        <GiveUpForm workId={work.id} />
      </Act>
    ),
    'check-flight': () => (
      <Act key="check-flight" title="Log the check flight" hint="Owed before anybody is carried: 91.407(b).">
        <p>{work.entry.checkFlightReason}</p>
        <CheckFlightForm workId={work.id} signer={view.me.name} />
      </Act>
    ),
  };
  return (
    <Card edge={underWay ? 'amber' : undefined}>
      <div className={styles.head}>
        <h3>{work.entry.title}</h3>
        <Tag tone={toneOf(work)} size="small">
          {workStateWords(work.state)}
        </Tag>
      </div>
      <p className={styles.soft}>
        {workKindWords(work.entry.workKind)}, begun by {work.startedBy}
        {work.forDeferral && '. The record of the deferral: it stays deferred after the signature.'}
      </p>
      {!underWay && work.state === 'signed' && (
        <details>
          <summary className={styles.fold}>The entry as signed</summary>
          <EntryFacts entry={work.entry} items={items} />
        </details>
      )}
      {acts.length > 0 && <ActList>{acts.map((act) => made[act]())}</ActList>}
    </Card>
  );
}

/** Everything the signer is asked to sign, in sight above the signature. */
function SignAct({ view, work, items }: Omit<WorkPartProps, 'roles'>) {
  const ruling = work.mySignature;
  if (!ruling) return null;
  const placardStands = !work.forDeferral && view.summary.placards.some((placard) => placard.placed);
  return (
    <Act
      title="Sign off"
      hint={ruling.allowed ? 'Approve for return to service.' : 'Not with your certificates.'}
    >
      <p>This is the entry as you sign it.</p>
      <EntryFacts entry={work.entry} items={items} />
      <blockquote className={styles.statement}>
        {RETURN_TO_SERVICE_STATEMENT}
        <Cite cite="14cfr43.9(a)(4)" />
      </blockquote>
      <RulingNotice
        ruling={ruling}
        allowed={`You sign under ${ruling.certificate?.kind ?? ''}, ${ruling.certificate?.number ?? ''}.`}
        refused="Your certificates do not allow this signature."
        whoCan={ruling.whoCan}
      />
      <SignForm
        workId={work.id}
        entryHash={work.entryHash}
        signer={view.me.name}
        placardStands={placardStands}
      />
    </Act>
  );
}

function toneOf({ state, entry, checkFlight }: WorkView): Tone {
  if (state === 'signed') return entry.checkFlightNeeded && !checkFlight ? 'amber' : 'green';
  return state === 'abandoned' ? 'grey' : 'amber';
}
