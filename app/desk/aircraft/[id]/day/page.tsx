import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { Caution } from '@/app/_ui/caution';
import { HoursText } from '@/app/_ui/moment';
import { Notice } from '@/app/_ui/notice';
import { PageTitle, Section } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readDay, type DayView } from '@/lib/fleet/read-day';
import { StaysFresh } from '@/app/_ui/freshness';
import { Refused } from '../../../refused';
import { Borders } from './borders';
import { ChooseDay } from './choose-day';
import styles from './day.module.css';
import { Flights } from './flights';
import { Timeline } from './timeline';
import { dayInFull } from './words';

export const metadata: Metadata = { title: 'Over the day' };

/** One aircraft over one day at its base: what it may do when, and what changes at each border. */
export default async function DayPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const { id } = await props.params;
  const { on } = await props.searchParams;
  const here = `/desk/aircraft/${encodeURIComponent(id)}/day`;
  const asked = typeof on === 'string' && on !== '' ? on : undefined;
  const { ref, who } = await requireActor(asked ? `${here}?on=${encodeURIComponent(asked)}` : here);
  const day = await readDay(ref, { aircraftId: id, on: asked });
  if (!day.ok) return <Refused who={who} title="Over the day" problem={day.problem} />;
  const { registration, baseIdent, baseName, zone, asOf, seq } = day.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: `/desk/aircraft/${id}`, label: registration }}
        lead={`In the air from ${baseIdent}, ${baseName}, below 10,000 ft and over land, at each moment of ${dayInFull(day.value.on)}. Times are those of ${baseIdent}.`}
      >
        {registration} over the day
      </PageTitle>
      <StaysFresh asOf={asOf} zones={[zone]} seq={seq}>
        <Which here={here} day={day.value} />
        <Section title="Timeline">
          <Timeline day={day.value} />
        </Section>
        <Section title="What changes, and why" id="borders">
          <Borders day={day.value} />
        </Section>
        <Section title={`Booked (${day.value.flights.length})`}>
          <Flights day={day.value} />
        </Section>
        <div className={styles.foot}>
          <Caution form="long" />
          <p className={styles.soft}>
            Facts version {day.value.factsVersion}, rules {day.value.rulesVersion}.
          </p>
        </div>
      </StaysFresh>
    </Shell>
  );
}

/** Which day is shown, the days beside it, and what has to be known about how it was judged. */
function Which({ here, day }: { here: string; day: DayView }) {
  const { on, today, previous, next, isPast, spentBefore } = day;
  return (
    <>
      <div className={styles.which}>
        <h2>
          {dayInFull(on)}
          {on === today && ' (today)'}
        </h2>
        <ButtonRow>
          <LinkButton href={`${here}?on=${previous}`}>Day before</LinkButton>
          {on !== today && <LinkButton href={here}>Today</LinkButton>}
          <LinkButton href={`${here}?on=${next}`}>Day after</LinkButton>
        </ButtonRow>
        <ChooseDay here={here} on={on} />
      </div>
      {isPast && (
        <Notice tone="blue" title="This day is over.">
          It is judged with the facts of now, not with those of then. What was answered then stands in the
          releases.
        </Notice>
      )}
      {spentBefore.flights > 0 && (
        <p>
          Counted before this day: <HoursText tenths={spentBefore.tenths} /> of{' '}
          {spentBefore.flights === 1 ? 'one flight' : `${spentBefore.flights} flights`} not back yet or booked
          earlier.
        </p>
      )}
    </>
  );
}
