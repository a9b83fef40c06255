import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { LinkButton } from '@/app/_ui/button';
import { DateText, Moment } from '@/app/_ui/moment';
import { Card, FactList } from '@/app/_ui/page';
import { type BaseView } from '@/lib/bases/read-bases';
import { type ClockChange } from '@/lib/rules/clock-change';
import { type SunEvent } from '@/lib/rules/sun';
import styles from './bases.module.css';

/** One base: the sun of today there, the next change of clocks, and what is known of it. */
export function BaseShown({ base, mayChange }: { base: BaseView; mayChange: boolean }) {
  const t = useWords();
  const { today, zone } = base;
  return (
    <Card>
      <div className={styles.head}>
        <h2 id={`base-${base.ident}`}>
          {base.ident} <span className={styles.soft}>{base.name}</span>
        </h2>
        {mayChange && (
          <LinkButton href={`/desk/bases/${base.id}`}>
            <Say
              text="Change<span> {ident}</span>"
              parts={{ span: <span className="out-of-sight" /> }}
              values={{ ident: base.ident }}
            />
          </LinkButton>
        )}
      </div>
      <p className={styles.soft}>
        {base.latitudeDeg}, {base.longitudeDeg} · {zone} · {sourceInWords(t, base.source)}
      </p>
      <section aria-label={t('The sun at {ident} today', { ident: base.ident })}>
        <h3>
          {t('Today,')} <DateText date={today.date} />
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
                <span>{t(EVENTS[event])}</span>
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
          { name: t('Clocks'), value: <Clocks change={base.clockChange} zone={zone} /> },
          { name: t('Aircraft'), value: base.aircraft.join(', ') || t('None based here') },
          { name: t('Repair to be had'), value: factSaid(t, base.repairAvailable) },
          { name: t('Airspace of 91.215(b)'), value: factSaid(t, base.transponderAirspace) },
          { name: t('Airspace of 91.225'), value: factSaid(t, base.adsbAirspace) },
          { name: t('Controlled airspace'), value: factSaid(t, base.controlledAirspace) },
        ]}
      />
    </Card>
  );
}

/** Dawn and dusk are those of civil twilight: the borders of night in 14 CFR 1.1. */
const EVENTS: Record<SunEvent, string> = {
  civilDawn: said('Night ends'),
  sunrise: said('Sunrise'),
  sunset: said('Sunset'),
  civilDusk: said('Night begins'),
};

function Clocks({ change, zone }: { change: ClockChange | null; zone: string }) {
  const t = useWords();
  if (!change) return <>{t('They do not change in the coming 400 days.')}</>;
  const { at, forwardMinutes, from, to } = change;
  const size = Math.abs(forwardMinutes);
  return (
    <>
      <Say
        text="{which} {which2} on <moment/> ({from} becomes {to})"
        parts={{ moment: <Moment at={at} zone={zone} /> }}
        values={{
          which: forwardMinutes > 0 ? t('Forward') : t('Back'),
          which2: size % 60 === 0 ? t('{size} h', { size: size / 60 }) : t('{size} min', { size }),
          from,
          to,
        }}
      />
    </>
  );
}

const factSaid = (t: Translate, fact: boolean | null) =>
  fact === null ? t('Not said') : fact ? t('Yes') : t('No');

function sourceInWords(t: Translate, source: string | null): string {
  if (source === null) return t('source not on record');
  return source === 'typed'
    ? t('typed in')
    : t('from the airport file, {source}', { source: source.replace('airport ', '') });
}
