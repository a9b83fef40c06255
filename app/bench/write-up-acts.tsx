import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
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
  const t = useWords();
  const { view, roles, items } = props;
  const acts = actsOnWriteUp(view, roles);
  if (acts.length === 0) return <p>{nothingOpen(t, view)}</p>;
  const made: Record<WriteUpAct, () => ReactNode> = {
    'place-placard': () => <PlacardActs key="place-placard" view={view} />,
    judge: () => <JudgeAct key="judge" view={view} />,
    servicing: () => (
      <Act
        key="servicing"
        title={t('Servicing done')}
        hint={t('Oil, air, a clean sample: closes the write-up.')}
      >
        <ServicingForm discrepancyId={view.summary.id} isOil={view.findingKey === 'oil-low'} />
      </Act>
    ),
    'within-limits': () => <WithinLimitsAct key="within-limits" view={view} />,
    defer: () => <DeferAct key="defer" view={view} />,
    extend: () => <ExtendAct key="extend" view={view} />,
    start: () => (
      <Act key="start" title={t('Start work')} hint={view.usual.action ?? t('Repair it.')}>
        <UsualWays view={view} />
        <StartForm discrepancyId={view.summary.id} items={items} />
      </Act>
    ),
  };
  return <ActList>{acts.map((act) => made[act]())}</ActList>;
}

const nothingOpen = (t: Translate, { summary, work }: WriteUpView): string =>
  summary.state === 'closed'
    ? t('Closed. The same trouble again is a new write-up.')
    : work.some(({ state }) => state === 'started' || state === 'entered')
      ? t('Work is under way; see below.')
      : t('Your role here leaves nothing to do. A mechanic goes on from here.');

function PlacardActs({ view }: { view: WriteUpView }) {
  const t = useWords();
  return view.summary.placards
    .filter((placard) => !placard.placed)
    .map((placard) => (
      <div key={placard.id} className={styles.placard}>
        <p>
          <Tag tone="amber" size="small">
            {t('Placard owed')}
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
  const t = useWords();
  const { summary, me } = view;
  return (
    <Act
      title={summary.severity === null ? t('Judge it') : t('Judge it anew')}
      hint={t('What it is, which system, how bad.')}
    >
      {me.mayFindWithinLimits && !me.mayFindWithinLimits.allowed && (
        <RulingNotice
          ruling={me.mayFindWithinLimits}
          allowed=""
          refused={t('Your certificates do not reach this part of the aircraft.')}
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
  const t = useWords();
  const ruling = view.me.mayFindWithinLimits;
  return (
    <Act
      title={t('Find it within limits')}
      hint={
        ruling?.allowed === false
          ? t('Not with your certificates.')
          : t('Measured, against a limit with its source.')
      }
    >
      {ruling && (
        <RulingNotice
          ruling={ruling}
          allowed={t('Your certificates allow this finding.')}
          refused={t('Your certificates do not allow this finding.')}
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
  const t = useWords();
  const { eligibility, me } = view;
  if (!eligibility) return null;
  const allowed = eligibility.table.filter((row) => row.allowed).map((row) => row.kind);
  const procedures = eligibility.stepsOwed.find((step) => step.id === 'mel-procedures');
  return (
    <Act
      title={t('Defer it')}
      hint={t('91.213 leaves it open {kinds}.', { kinds: kindsInWords(allowed).join(' or ') })}
    >
      <RulingNotice
        ruling={me.mayDetermine}
        allowed={t('Your certificates allow the determination of 91.213(d)(4).')}
        refused={t('Your certificates do not allow the determination of 91.213(d)(4).')}
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
  const t = useWords();
  if (!deferral || !mayExtend) return null;
  return (
    <Act
      title={t('Extend the repair interval')}
      hint={mayExtend.allowed ? t('Once, with its reason.') : t('Not now: see why.')}
    >
      <RulingNotice
        ruling={mayExtend}
        allowed={t('The letter of authorization allows one extension.')}
        refused={t('This interval may not be extended.')}
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
  const t = useWords();
  if (view.usual.ways.length === 0) return null;
  return (
    <div>
      <p className={styles.usual}>{t('Usually')}</p>
      <ul className={styles.ways}>
        {view.usual.ways.map((way) => (
          <li key={way.what}>
            <b>{way.what}</b>: {workKindWords(t, way.kind).toLowerCase()}
            {way.preventiveItem !== null &&
              t(', item {preventiveItem}', { preventiveItem: way.preventiveItem })}
            {way.swapOnly && t(', unit only exchanged')}. {way.whoCan}
          </li>
        ))}
      </ul>
    </div>
  );
}
