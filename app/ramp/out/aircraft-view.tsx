'use client';

import { Say, useWords } from '#words';
import { mayUse } from '@/lib/access/policy';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { Moment } from '../../_ui/moment';
import { Card, EmptyState, PageTitle, Section } from '../../_ui/page';
import { useWalk } from '../_phone/walks';
import { AircraftDrawing } from './drawing/aircraft-drawing';
import { findingPath } from './finding-path';
import { KeptAnswerInFull } from './kept-answer';
import { FlightCard } from './meters/flight-card';
import styles from './out.module.css';
import { PhoneWriteUps } from './phone-write-ups';
import { Go } from './place';
import { useNow } from './use-now';

const EDGES = { 'no-go': 'red', 'go-with-limits': 'amber', go: undefined } as const;

/** One aircraft as this phone knows it, when the server does not answer. */
export function AircraftView({ pack, aircraft }: { pack: RampPack; aircraft: PackAircraft }) {
  const t = useWords();
  const now = useNow();
  const walk = useWalk(aircraft.id);
  const { id, registration, zone, writeUps, closed, flights } = aircraft;
  const path = `/ramp/${id}`;
  const othersFlights = flights.filter(({ pilotId }) => pilotId !== pack.person.id);
  return (
    <div className={styles.column}>
      <div>
        <Go href="/ramp" className={styles.back}>
          <Say text="<span>←</span> All aircraft" parts={{ span: <span aria-hidden="true" /> }} />
        </Go>
        <PageTitle
          lead={t('{typeName}, {baseIdent}. As the phone knew it at the time below.', {
            typeName: aircraft.typeName,
            baseIdent: aircraft.baseIdent,
          })}
        >
          {registration}
        </PageTitle>
        <Card edge={aircraft.answer ? EDGES[aircraft.answer.outcome] : undefined}>
          <KeptAnswerInFull aircraft={aircraft} pack={pack} now={now} />
        </Card>
      </div>
      <FlightCard pack={pack} aircraft={aircraft} />
      <div className={styles.buttons}>
        {mayUse(pack.person.roles, 'walkaround.start') && (
          <Go href={`${path}/walk`} className={`${styles.press} ${styles.main}`}>
            {walk ? t('Go on with the walkaround') : t('Start walkaround')}
          </Go>
        )}
        <Go href={findingPath(id, {})} className={styles.press}>
          {t('Write up a finding')}
        </Go>
        {othersFlights.map(({ releaseId, departAt, out }) => (
          <Go
            key={releaseId}
            href={`${path}/meters?release=${releaseId}&moment=${out ? 'in' : 'out'}`}
            className={styles.press}
          >
            <span>
              <Say
                text="{which}, flight of <moment/>"
                parts={{ moment: <Moment at={departAt} zone={zone} /> }}
                values={{ which: out ? t('Meters at return') : t('Meters at departure') }}
              />
            </span>
          </Go>
        ))}
      </div>
      <Section title={t('Where it is written up')}>
        <AircraftDrawing
          aircraftId={id}
          stations={pack.lists[aircraft.typeId]?.list.stations ?? []}
          writeUps={writeUps}
          walk={null}
        />
      </Section>
      <Section title={t('Written up')}>
        {writeUps.length === 0 ? (
          <EmptyState title={t('Nothing was written up on this aircraft.')} />
        ) : (
          <Card>
            <PhoneWriteUps writeUps={writeUps} zone={zone} label={t('Written up')} showPlace />
          </Card>
        )}
      </Section>
      {closed.length > 0 && (
        <Section title={t('Closed in the last 30 days')}>
          <Card>
            <PhoneWriteUps writeUps={closed} zone={zone} label={t('Closed in the last 30 days')} showPlace />
          </Card>
        </Section>
      )}
    </div>
  );
}
