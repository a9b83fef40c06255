import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
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

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Over the day') };
}

/** One aircraft over one day at its base: what it may do when, and what changes at each border. */
export default async function DayPage(props: {
  params: Promise<{ id: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const t = await words();
  const { id } = await props.params;
  const { on } = await props.searchParams;
  const here = `/desk/aircraft/${encodeURIComponent(id)}/day`;
  const asked = typeof on === 'string' && on !== '' ? on : undefined;
  const { ref, who } = await requireActor(asked ? `${here}?on=${encodeURIComponent(asked)}` : here);
  const day = await readDay(ref, { aircraftId: id, on: asked });
  if (!day.ok) return <Refused who={who} title={t('Over the day')} problem={day.problem} />;
  const { registration, baseIdent, baseName, zone, asOf, seq } = day.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: `/desk/aircraft/${id}`, label: registration }}
        lead={t(
          'In the air from {baseIdent}, {baseName}, below 10,000 ft and over land, at each moment of {dayInFull}. Times are those of {baseIdent}.',
          { baseIdent, baseName, dayInFull: dayInFull(t, day.value.on) },
        )}
      >
        {t('{registration} over the day', { registration })}
      </PageTitle>
      <StaysFresh asOf={asOf} zones={[zone]} seq={seq}>
        <Which here={here} day={day.value} />
        <Section title={t('Timeline')}>
          <Timeline day={day.value} />
        </Section>
        <Section title={t('What changes, and why')} id="borders">
          <Borders day={day.value} />
        </Section>
        <Section title={t('Booked ({flights})', { flights: day.value.flights.length })}>
          <Flights day={day.value} />
        </Section>
        <div className={styles.foot}>
          <Caution form="long" />
          <p className={styles.soft}>
            {t('Facts version {factsVersion}, rules {rulesVersion}.', {
              factsVersion: day.value.factsVersion,
              rulesVersion: day.value.rulesVersion,
            })}
          </p>
        </div>
      </StaysFresh>
    </Shell>
  );
}

/** Which day is shown, the days beside it, and what has to be known about how it was judged. */
function Which({ here, day }: { here: string; day: DayView }) {
  const t = useWords();
  const { on, today, previous, next, isPast, spentBefore } = day;
  return (
    <>
      <div className={styles.which}>
        <h2>
          {dayInFull(t, on)}
          {on === today && t(' (today)')}
        </h2>
        <ButtonRow>
          <LinkButton href={`${here}?on=${previous}`}>{t('Day before')}</LinkButton>
          {on !== today && <LinkButton href={here}>{t('Today')}</LinkButton>}
          <LinkButton href={`${here}?on=${next}`}>{t('Day after')}</LinkButton>
        </ButtonRow>
        <ChooseDay here={here} on={on} />
      </div>
      {isPast && (
        <Notice tone="blue" title={t('This day is over.')}>
          {t(
            'It is judged with the facts of now, not with those of then. What was answered then stands in the releases.',
          )}
        </Notice>
      )}
      {spentBefore.flights > 0 && (
        <p>
          <Say
            text="Counted before this day: <hoursText/> of {which} not back yet or booked earlier."
            parts={{ hoursText: <HoursText tenths={spentBefore.tenths} /> }}
            values={{
              which:
                spentBefore.flights === 1
                  ? t('one flight')
                  : t('{flights} flights', { flights: spentBefore.flights }),
            }}
          />
        </p>
      )}
    </>
  );
}
