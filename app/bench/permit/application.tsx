import { type ApplicationFacts } from '@/lib/permits/application';
import { Cite } from '../../_ui/cite';
import { Card } from '../../_ui/page';
import styles from './permit.module.css';

/** The facts of 21.199(a) as a plain list to copy into an application. What only the applicant can say is left open, and said so. */
export function Application(props: {
  aircraft: { registration: string; typeName: string; serial: string };
  facts: ApplicationFacts;
}) {
  const { aircraft, facts } = props;
  const open = (words: string) => <span className={styles.open}>Yours to say: {words}</span>;
  return (
    <Card>
      <p>
        What an application states, <Cite cite="14cfr21.199(a)" plain />. From memory: that the FAA asks for
        it on a form of its own, and its order.
      </p>
      <ul className={styles.copy}>
        <li>
          Aircraft: {aircraft.registration}, {aircraft.typeName}, serial {aircraft.serial}
        </li>
        <li>Purpose of the flight: {open('repair, storage, delivery or evacuation')}</li>
        <li>Itinerary: {open('from, to, by which way, on which day')}</li>
        <li>Crew needed to operate the aircraft: {open('who, and why no fewer will do')}</li>
        <li>
          Ways in which it does not comply
          {facts.doesNotComply.length === 0 ? (
            ': none known here today'
          ) : (
            <ul className={styles.copy}>
              {facts.doesNotComply.map((one) => (
                <li key={`${one.cite}-${one.because}-${one.about}`}>
                  {one.about && `${one.about}: `}
                  {one.because} (<Cite cite={one.cite} plain />)
                </li>
              ))}
            </ul>
          )}
        </li>
        <li>Restrictions thought necessary: {open('light, weather, route, speed, who is aboard')}</li>
      </ul>
      {facts.notByPermit.length > 0 && (
        <>
          <p>
            <b>No permit stands in for these.</b> They are settled before the flight:
          </p>
          <ul className={styles.copy}>
            {facts.notByPermit.map((line) => (
              <li key={`${line.cite}-${line.because}-${line.about?.id}`}>
                {line.because} (<Cite cite={line.cite} plain />)
              </li>
            ))}
          </ul>
        </>
      )}
    </Card>
  );
}
