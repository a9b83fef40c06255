import { English, Say, useWords } from '#words';
import { type ApplicationFacts } from '@/lib/permits/application';
import { Cite } from '../../_ui/cite';
import { Card } from '../../_ui/page';
import styles from './permit.module.css';

/** The facts of 21.199(a) as a plain list to copy into an application. What only the applicant can say is left open, and said so. */
export function Application(props: {
  aircraft: { registration: string; typeName: string; serial: string };
  facts: ApplicationFacts;
}) {
  const t = useWords();
  const { aircraft, facts } = props;
  const open = (words: string) => (
    <span className={styles.open}>{t('Yours to say: {words}', { words })}</span>
  );
  return (
    <Card>
      <p>
        <Say
          text="What an application states, <cite/>. From memory: that the FAA asks for it on a form of its own, and its order."
          parts={{ cite: <Cite cite="14cfr21.199(a)" plain /> }}
        />
      </p>
      <ul className={styles.copy}>
        <li>
          {t('Aircraft: {registration}, {typeName}, serial {serial}', {
            registration: aircraft.registration,
            typeName: aircraft.typeName,
            serial: aircraft.serial,
          })}
        </li>
        <li>
          {t('Purpose of the flight:')} {open(t('repair, storage, delivery or evacuation'))}
        </li>
        <li>
          {t('Itinerary:')} {open(t('from, to, by which way, on which day'))}
        </li>
        <li>
          {t('Crew needed to operate the aircraft:')} {open(t('who, and why no fewer will do'))}
        </li>
        <li>
          {t('Ways in which it does not comply')}
          {facts.doesNotComply.length === 0 ? (
            t(': none known here today')
          ) : (
            <ul className={styles.copy}>
              {facts.doesNotComply.map((one) => (
                <li key={`${one.cite}-${one.because}-${one.about}`}>
                  {one.about && `${one.about}: `}
                  <English>{one.because}</English> (<Cite cite={one.cite} plain />)
                </li>
              ))}
            </ul>
          )}
        </li>
        <li>
          {t('Restrictions thought necessary:')} {open(t('light, weather, route, speed, who is aboard'))}
        </li>
      </ul>
      {facts.notByPermit.length > 0 && (
        <>
          <p>
            <Say
              text="<b>No permit stands in for these.</b> They are settled before the flight:"
              parts={{ b: <b /> }}
            />
          </p>
          <ul className={styles.copy}>
            {facts.notByPermit.map((line) => (
              <li key={`${line.cite}-${line.because}-${line.about?.id}`}>
                <English>{line.because}</English> (<Cite cite={line.cite} plain />)
              </li>
            ))}
          </ul>
        </>
      )}
    </Card>
  );
}
