import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { Notice } from '@/app/_ui/notice';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { type ActorRef } from '@/lib/access/actor';
import { mayUse } from '@/lib/access/policy';
import { readPlansToCompose, type PlanChoice } from '@/lib/flights/plans-to-compose';
import { emptyFlightForm, type FlightForm } from '@/lib/releases/flight-form';
import { type NamedPlace } from '@/lib/releases/place-text';
import { said } from '@/lib/words/said';
import { formOfFlight, formOfPlan } from '@/lib/releases/prefill';
import { readDeskChoices, readRelease, type DeskChoices } from '@/lib/releases/read-desk';
import { Refused } from '../refused';
import { FlightDesk } from './flight-desk';
import { PlannedNext } from './planned-next';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Compose a flight') };
}

type Asked = Record<string, string | string[] | undefined>;

/** Compose a flight, get the answer, release it. It starts empty, from an aircraft, from a plan, or from an earlier release. */
export default async function FlightPage(props: { searchParams: Promise<Asked> }) {
  const t = await words();
  const asked = await props.searchParams;
  const { ref, who } = await requireActor(`/desk/flight${backTo(asked)}`);
  const choices = await readDeskChoices(ref, {});
  if (!choices.ok) return <Refused who={who} title={t('Compose a flight')} problem={choices.problem} />;
  const plans = mayUse(who.roles, 'planned-flights.read') ? await readPlansToCompose(ref, {}) : null;
  const begun = await startOf(ref, asked, choices.value);
  return (
    <Shell who={who}>
      <PageTitle back={{ href: '/desk', label: t('Fleet board') }}>{t('Compose a flight')}</PageTitle>
      {begun.missing && (
        <Notice tone="amber" title={t(begun.missing)}>
          <p>{t('The form below is empty.')}</p>
        </Notice>
      )}
      {plans?.ok && <PlannedNext plans={plans.value} chosen={begun.plan} />}
      <FlightDesk
        // Another start is another form: what was typed for the one before is not carried into it.
        key={JSON.stringify([asked.plan, asked.release, asked.aircraft])}
        choices={choices.value}
        start={begun.form}
        places={begun.places}
        mayRelease={mayUse(who.roles, 'flight.release')}
        mayBench={mayUse(who.roles, 'bench.read')}
      />
    </Shell>
  );
}

interface Begun {
  readonly form: FlightForm;
  readonly places: readonly NamedPlace[];
  readonly plan: PlanChoice | null;
  /** What was asked for and is not there. */
  readonly missing: string | null;
}

async function startOf(ref: ActorRef, asked: Asked, choices: DeskChoices): Promise<Begun> {
  const empty = { places: [], plan: null, missing: null };
  if (typeof asked.plan === 'string') {
    const read = await readPlansToCompose(ref, { plannedFlightId: asked.plan });
    const plan = read.ok ? read.value[0] : undefined;
    return plan
      ? { form: formOfPlan(plan), places: [plan.from, plan.to], plan, missing: null }
      : {
          ...empty,
          form: emptyFlightForm(),
          missing: said('There is no such planned flight, or it was cancelled.'),
        };
  }
  if (typeof asked.release === 'string') {
    const read = await readRelease(ref, { releaseId: asked.release });
    if (!read.ok) return { ...empty, form: emptyFlightForm(), missing: read.problem.say };
    const { flight } = read.value;
    const nameOf = (ident: string) => choices.bases.find((base) => base.ident === ident)?.name;
    const places = [flight.from, flight.to].map(({ ident, zone }) => ({
      ident,
      zone,
      name: nameOf(ident) ?? '',
    }));
    return { ...empty, form: formOfFlight(read.value, nameOf), places };
  }
  const aircraft = choices.aircraft.find((one) => one.id === asked.aircraft);
  return { ...empty, form: emptyFlightForm(aircraft?.id) };
}

function backTo(asked: Asked): string {
  const known = ['aircraft', 'plan', 'release'].flatMap((key) => {
    const value = asked[key];
    return typeof value === 'string' ? [[key, value]] : [];
  });
  return known.length === 0 ? '' : `?${new URLSearchParams(known).toString()}`;
}
