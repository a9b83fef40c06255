import { COLUMN_DOCS } from '@/lib/flights/import/csv-columns';
import { SERIES_DAYS } from '@/lib/flights/import/icalendar';
import styles from './import.module.css';

/** The columns of the CSV, and the file to begin with. */
export function CsvColumns() {
  return (
    <>
      <p>
        The first row names the columns, in any order; columns with other names are not read. Commas or
        semicolons, UTF-8. Flights that are over already are skipped. {/* A file, not a page of ours. */}
        <a href="/desk/plans/import/template" download className={styles.file}>
          Download a template
        </a>
      </p>
      <dl className={styles.columns}>
        {COLUMN_DOCS.map(({ column, needed, what }) => (
          <div key={column}>
            <dt>
              <code>{column}</code> <span className={styles.soft}>{needed ? 'needed' : 'can be empty'}</span>
            </dt>
            <dd>{what}</dd>
          </div>
        ))}
      </dl>
      <p>
        When clocks change, some local times do not exist and some are there twice: such a row is told, never
        guessed. Write the offset then.
      </p>
    </>
  );
}

/** What becomes of an event. */
export function ICalendarWords() {
  return (
    <ul className={styles.words}>
      <li>
        <b>Aircraft</b>: the registration in RESOURCES, else in LOCATION, else in SUMMARY. Exactly one of
        yours.
      </li>
      <li>
        <b>Pilot</b>: the ATTENDEE or ORGANIZER who is a pilot here, by mail address. With several it is left
        open.
      </li>
      <li>
        <b>Times</b>: DTSTART with DTEND or DURATION. Times without a zone are those of the aircraft’s base.
        An all-day event is no flight.
      </li>
      <li>
        <b>Series</b> are taken {SERIES_DAYS} days ahead; send the file again for more. A time that left the
        series is cancelled here, too.
      </li>
      <li>
        <b>Cancelled</b> events cancel the plan they made. One that is released already is left alone, and
        that is said.
      </li>
      <li>An event is known by its UID: what changed there replaces the plan here.</li>
    </ul>
  );
}
