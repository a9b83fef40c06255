import { LinkButton } from '@/app/_ui/button';
import { DateText, Moment } from '@/app/_ui/moment';
import { Card, FactList } from '@/app/_ui/page';
import { type BaseView } from '@/lib/bases/read-bases';
import { type ClockChange } from '@/lib/rules/clock-change';
import { type SunEvent } from '@/lib/rules/sun';
import styles from './bases.module.css';

/** One base: the sun of today there, the next change of clocks, and what is known of it. */
export function BaseShown({ base, mayChange }: { base: BaseView; mayChange: boolean }) {
  const { today, zone } = base;
  return (
    <Card>
      <div className={styles.head}>
        <h2 id={`base-${base.ident}`}>
          {base.ident} <span className={styles.soft}>{base.name}</span>
        </h2>
        {mayChange && (
          <LinkButton href={`/desk/bases/${base.id}`}>
            Change<span className="out-of-sight"> {base.ident}</span>
          </LinkButton>
        )}
      </div>
      <p className={styles.soft}>
        {base.latitudeDeg}, {base.longitudeDeg} · {zone} · {sourceInWords(base.source)}
      </p>
      <section aria-label={`The sun at ${base.ident} today`}>
        <h3>
          Today, <DateText date={today.date} />
        </h3>
        {today.say.map((words) => (
          <p key={words} className={styles.said}>
            {words}
          </p>
        ))}
        {today.events.length > 0 && (
          <ol className={styles.sun}>
            {today.events.map(({ event, at }) => (
              <li key={at}>
                <span>{EVENTS[event]}</span>
                <b>
                  <Moment at={at} zone={zone} clock />
                </b>
              </li>
            ))}
          </ol>
        )}
      </section>
      <FactList
        facts={[
          { name: 'Clocks', value: <Clocks change={base.clockChange} zone={zone} /> },
          { name: 'Aircraft', value: base.aircraft.join(', ') || 'None based here' },
          { name: 'Repair to be had', value: said(base.repairAvailable) },
          { name: 'Airspace of 91.215(b)', value: said(base.transponderAirspace) },
          { name: 'Airspace of 91.225', value: said(base.adsbAirspace) },
          { name: 'Controlled airspace', value: said(base.controlledAirspace) },
        ]}
      />
    </Card>
  );
}

/** Dawn and dusk are those of civil twilight: the borders of night in 14 CFR 1.1. */
const EVENTS: Record<SunEvent, string> = {
  civilDawn: 'Night ends',
  sunrise: 'Sunrise',
  sunset: 'Sunset',
  civilDusk: 'Night begins',
};

function Clocks({ change, zone }: { change: ClockChange | null; zone: string }) {
  if (!change) return <>They do not change in the coming 400 days.</>;
  const { at, forwardMinutes, from, to } = change;
  const size = Math.abs(forwardMinutes);
  return (
    <>
      {forwardMinutes > 0 ? 'Forward' : 'Back'} {size % 60 === 0 ? `${size / 60} h` : `${size} min`} on{' '}
      <Moment at={at} zone={zone} /> ({from} becomes {to})
    </>
  );
}

const said = (fact: boolean | null) => (fact === null ? 'Not said' : fact ? 'Yes' : 'No');

function sourceInWords(source: string | null): string {
  if (source === null) return 'source not on record';
  return source === 'typed' ? 'typed in' : `from the airport file, ${source.replace('airport ', '')}`;
}
