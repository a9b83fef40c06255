import { type ReactNode } from 'react';
import { type Role } from '@/lib/access/policy';
import { type WriteUpView } from '@/lib/determinations/read-write-up';
import { actsOnWriteUp, type WriteUpAct } from '@/lib/work/acts-open';
import { dayInWords } from '@/lib/rules/in-words';
import { kindsInWords } from '@/lib/rules/kinds-in-words';
import { Tag } from '../_ui/tag';
import { Act, ActList } from './acts';
import { DeferForm } from './forms/defer-form';
import { ExtendForm } from './forms/extend-form';
import { JudgeForm } from './forms/judge-form';
import { MeasuredWithinForm } from './forms/measured-within-form';
import { PlacardForm } from './forms/placard-form';
import { ServicingForm } from './forms/servicing-form';
import { StartForm } from './forms/start-form';
import { WithinLimitsForm } from './forms/within-limits-form';
import { type PreventiveChoice } from './preventive-choices';
import { RulingNotice } from './ruling-notice';
import styles from './write-up-acts.module.css';
import { workKindWords } from './words';

/** What can be done about a write-up, each act a line that unfolds to its form. */
export function WriteUpActs(props: {
  view: WriteUpView;
  roles: readonly Role[];
  items: readonly PreventiveChoice[];
}) {
  const { view, roles, items } = props;
  const acts = actsOnWriteUp(view, roles);
  if (acts.length === 0) return <p>{nothingOpen(view)}</p>;
  const made: Record<WriteUpAct, () => ReactNode> = {
    'place-placard': () => <PlacardActs key="place-placard" view={view} />,
    judge: () => <JudgeAct key="judge" view={view} />,
    servicing: () => (
      <Act key="servicing" title="Servicing done" hint="Oil, air, a clean sample: closes the write-up.">
        <ServicingForm discrepancyId={view.summary.id} isOil={view.findingKey === 'oil-low'} />
      </Act>
    ),
    'within-limits': () => <WithinLimitsAct key="within-limits" view={view} />,
    defer: () => <DeferAct key="defer" view={view} />,
    extend: () => <ExtendAct key="extend" view={view} />,
    start: () => (
      <Act key="start" title="Start work" hint={view.usual.action ?? 'Repair it.'}>
        <UsualWays view={view} />
        <StartForm discrepancyId={view.summary.id} items={items} />
      </Act>
    ),
  };
  return <ActList>{acts.map((act) => made[act]())}</ActList>;
}

const nothingOpen = ({ summary, work }: WriteUpView): string =>
  summary.state === 'closed'
    ? 'Closed. The same trouble again is a new write-up.'
    : work.some(({ state }) => state === 'started' || state === 'entered')
      ? 'Work is under way; see below.'
      : 'Your role here leaves nothing to do. A mechanic goes on from here.';

function PlacardActs({ view }: { view: WriteUpView }) {
  return view.summary.placards
    .filter((placard) => !placard.placed)
    .map((placard) => (
      <div key={placard.id} className={styles.placard}>
        <p>
          <Tag tone="amber" size="small">
            Placard owed
          </Tag>
        </p>
        <p>
          <b className={styles.wording}>{placard.wording}</b>
          <span className={styles.place}>{placard.location}</span>
        </p>
        <PlacardForm placardId={placard.id} />
      </div>
    ));
}

function JudgeAct({ view }: { view: WriteUpView }) {
  const { summary, me } = view;
  return (
    <Act
      title={summary.severity === null ? 'Judge it' : 'Judge it anew'}
      hint="What it is, which system, how bad."
    >
      {me.mayFindWithinLimits && !me.mayFindWithinLimits.allowed && (
        <RulingNotice
          ruling={me.mayFindWithinLimits}
          allowed=""
          refused="Your certificates do not reach this part of the aircraft."
        />
      )}
      <JudgeForm
        discrepancyId={summary.id}
        jasc={summary.jasc}
        equipmentId={view.equipmentId}
        inoperativeCount={view.inoperativeCount}
        equipment={view.equipment}
        signer={me.name}
      />
    </Act>
  );
}

function WithinLimitsAct({ view }: { view: WriteUpView }) {
  const ruling = view.me.mayFindWithinLimits;
  return (
    <Act
      title="Find it within limits"
      hint={
        ruling?.allowed === false
          ? 'Not with your certificates.'
          : 'Measured, against a limit with its source.'
      }
    >
      {ruling && (
        <RulingNotice
          ruling={ruling}
          allowed="Your certificates allow this finding."
          refused="Your certificates do not allow this finding."
        />
      )}
      {view.limits.length > 0 ? (
        <MeasuredWithinForm
          discrepancyId={view.summary.id}
          signer={view.me.name}
          limits={view.limits}
          neededInWords={view.neededInWords}
        />
      ) : (
        <WithinLimitsForm discrepancyId={view.summary.id} signer={view.me.name} />
      )}
    </Act>
  );
}

function DeferAct({ view }: { view: WriteUpView }) {
  const { eligibility, me } = view;
  if (!eligibility) return null;
  const allowed = eligibility.table.filter((row) => row.allowed).map((row) => row.kind);
  const procedures = eligibility.stepsOwed.find((step) => step.id === 'mel-procedures');
  return (
    <Act title="Defer it" hint={`91.213 leaves it open ${kindsInWords(allowed).join(' or ')}.`}>
      <RulingNotice
        ruling={me.mayDetermine}
        allowed="Your certificates allow the determination of 91.213(d)(4)."
        refused="Your certificates do not allow the determination of 91.213(d)(4)."
      />
      <DeferForm
        discrepancyId={view.summary.id}
        signer={me.name}
        mel={eligibility.path === 'mel' ? { procedures: procedures?.text ?? null } : null}
        isElt={view.equipment.some((item) => item.id === view.equipmentId && item.isElt)}
        judgements={eligibility.judgements}
        together={eligibility.together}
      />
    </Act>
  );
}

/** Offered for every live deferral under a list: where the letter gives no authority, the paragraph says so. */
function ExtendAct({ view: { deferral, mayExtend, me } }: { view: WriteUpView }) {
  if (!deferral || !mayExtend) return null;
  return (
    <Act
      title="Extend the repair interval"
      hint={mayExtend.allowed ? 'Once, with its reason.' : 'Not now: see why.'}
    >
      <RulingNotice
        ruling={mayExtend}
        allowed="The letter of authorization allows one extension."
        refused="This interval may not be extended."
      />
      {mayExtend.allowed && (
        <ExtendForm
          deferralId={deferral.id}
          signer={me.name}
          latest={mayExtend.latest && dayInWords(mayExtend.latest)}
        />
      )}
    </Act>
  );
}

/** The usual ways to put it right, with who can sign each. A hint: what was really done is what is entered. */
function UsualWays({ view }: { view: WriteUpView }) {
  if (view.usual.ways.length === 0) return null;
  return (
    <div>
      <p className={styles.usual}>Usually</p>
      <ul className={styles.ways}>
        {view.usual.ways.map((way) => (
          <li key={way.what}>
            <b>{way.what}</b>: {workKindWords(way.kind).toLowerCase()}
            {way.preventiveItem !== null && `, item ${way.preventiveItem}`}
            {way.swapOnly && ', unit only exchanged'}. {way.whoCan}
          </li>
        ))}
      </ul>
    </div>
  );
}
