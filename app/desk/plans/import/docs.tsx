import { Say, useWords } from '#words';
import { COLUMN_DOCS } from '@/lib/flights/import/csv-columns';
import { SERIES_DAYS } from '@/lib/flights/import/icalendar';
import styles from './import.module.css';

/** The columns of the CSV, and the file to begin with. */
export function CsvColumns() {
  const t = useWords();
  return (
    <>
      <p>
        {t(
          'The first row names the columns, in any order; columns with other names are not read. Commas or semicolons, UTF-8. Flights that are over already are skipped.',
        )}{' '}
        {/* A file, not a page of ours. */}
        <a href="/desk/plans/import/template" download className={styles.file}>
          {t('Download a template')}
        </a>
      </p>
      <dl className={styles.columns}>
        {COLUMN_DOCS.map(({ column, needed, what }) => (
          <div key={column}>
            <dt>
              <code>{column}</code>{' '}
              <span className={styles.soft}>{needed ? t('needed') : t('can be empty')}</span>
            </dt>
            <dd>{t(what)}</dd>
          </div>
        ))}
      </dl>
      <p>
        {t(
          'When clocks change, some local times do not exist and some are there twice: such a row is told, never guessed. Write the offset then.',
        )}
      </p>
    </>
  );
}

/** What becomes of an event. */
export function ICalendarWords() {
  const t = useWords();
  return (
    <ul className={styles.words}>
      <li>
        <Say
          text="<b>Aircraft</b>: the registration in RESOURCES, else in LOCATION, else in SUMMARY. Exactly one of yours."
          parts={{ b: <b /> }}
        />
      </li>
      <li>
        <Say
          text="<b>Pilot</b>: the ATTENDEE or ORGANIZER who is a pilot here, by mail address. With several it is left open."
          parts={{ b: <b /> }}
        />
      </li>
      <li>
        <Say
          text="<b>Times</b>: DTSTART with DTEND or DURATION. Times without a zone are those of the aircraft’s base. An all-day event is no flight."
          parts={{ b: <b /> }}
        />
      </li>
      <li>
        <Say
          text="<b>Series</b> are taken {series_days} days ahead; send the file again for more. A time that left the series is cancelled here, too."
          parts={{ b: <b /> }}
          values={{ series_days: SERIES_DAYS }}
        />
      </li>
      <li>
        <Say
          text="<b>Cancelled</b> events cancel the plan they made. One that is released already is left alone, and that is said."
          parts={{ b: <b /> }}
        />
      </li>
      <li>{t('An event is known by its UID: what changed there replaces the plan here.')}</li>
    </ul>
  );
}
