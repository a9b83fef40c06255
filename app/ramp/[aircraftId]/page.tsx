import { Say, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { mayUse, type Role } from '@/lib/access/policy';
import { readAircraftFile, type AircraftFile } from '@/lib/fleet/read-aircraft-file';
import { readNewestChange } from '@/lib/live/newest-change';
import { type Answer, type Line } from '@/lib/rules/verdict';
import { requireActor } from '../../_session/actor-ref';
import { LinkButton } from '../../_ui/button';
import { FreshMark, StaysFresh } from '../../_ui/freshness';
import { Moment } from '../../_ui/moment';
import { Card, EmptyState, PageTitle, Section } from '../../_ui/page';
import { Shell } from '../../_ui/shell';
import { VerdictLines } from '../../_ui/verdict-lines';
import { PaperLink } from '../../bench/paper-link';
import { OwnAlarms } from '../_parts/own-alarms';
import { OwnFlight } from '../_parts/own-flight';
import { PlainProblem } from '../_parts/plain-problem';
import { Placards } from '../_parts/placards';
import styles from '../_parts/ramp.module.css';
import phone from '../out/out.module.css';
import { Go } from '../out/place';
import { DrawnAircraft } from '../_parts/drawn-aircraft';
import { StartWalk } from '../_parts/start-walk';
import { usualUse } from '../_parts/usual-use';
import { WriteUpCard } from '../_parts/write-up-card';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Aircraft') };
}
export const dynamic = 'force-dynamic';

interface Props {
  params: Promise<{ aircraftId: string }>;
}

/** One aircraft before the walkaround: today's answer, and what is known of it already. */
export default async function AircraftPage({ params }: Props) {
  const t = await words();
  const { aircraftId } = await params;
  const { ref, who } = await requireActor(`/ramp/${aircraftId}`);
  // Before the rest: what is written in between is then told of as new.
  const newest = await readNewestChange(ref, {});
  const file = await readAircraftFile(ref, { aircraftId });
  if (!file.ok) return <PlainProblem who={who} problem={file.problem} />;
  const { row, asOf, writeUps, recentlyClosed } = file.value;
  const mayPlace = mayUse(who.roles, 'placard.place');
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle
          back={{ href: '/ramp', label: t('All aircraft') }}
          lead={`${row.typeName}, ${row.baseName}`}
        >
          {row.registration}
        </PageTitle>
        <StaysFresh asOf={asOf} zones={[row.zone]} seq={newest.ok ? newest.value.seq : undefined}>
          <OwnAlarms actor={ref} />
          <TodaysAnswer file={file.value} />
          <div className={styles.go}>
            <OwnFlight aircraftId={aircraftId} zone={row.zone} />
            {mayUse(who.roles, 'walkaround.start') && <StartWalk aircraftId={aircraftId} zone={row.zone} />}
            {/* A plain load: the form is a page the phone keeps, so it opens at once with any signal. */}
            <Go href={`/ramp/${aircraftId}/finding`} className={phone.press}>
              {t('Write up a finding')}
            </Go>
          </div>
          <Section title={t('Where it is written up')}>
            <DrawnAircraft aircraftId={aircraftId} writeUps={writeUps.map(marked)} />
          </Section>
          <Section title={t('Written up now')}>
            {writeUps.length === 0 ? (
              <EmptyState title={t('Nothing is written up on this aircraft.')} />
            ) : (
              <ul className={styles.plainList}>
                {writeUps.map((writeUp) => (
                  <li key={writeUp.id}>
                    <WriteUpCard writeUp={writeUp} now={asOf}>
                      <Placards placards={writeUp.placards} mayPlace={mayPlace} />
                    </WriteUpCard>
                  </li>
                ))}
              </ul>
            )}
          </Section>
          <PilotsRecords file={file.value} roles={who.roles} />
          {recentlyClosed.length > 0 && (
            <Section title={t('Closed in the last 30 days')}>
              <ul className={styles.plainList}>
                {recentlyClosed.map((writeUp) => (
                  <li key={writeUp.id}>
                    <WriteUpCard writeUp={writeUp} now={asOf} />
                  </li>
                ))}
              </ul>
            </Section>
          )}
        </StaysFresh>
      </div>
    </Shell>
  );
}

/** What a pilot records or carries: the VOR check (91.171(d)), use of the locator, and the list of what is deferred. */
function PilotsRecords({ file, roles }: { file: AircraftFile; roles: readonly Role[] }) {
  const t = useWords();
  const records = file.requirements.filter(
    ({ kind }) =>
      (kind === 'vor-check' && mayUse(roles, 'vor-check.record')) ||
      (kind === 'elt-battery' && mayUse(roles, 'elt-use.record')),
  );
  const deferred = file.writeUps.some(({ state }) => state === 'deferred');
  if (records.length === 0 && !deferred) return null;
  return (
    <Section title={t('To record and to carry')}>
      <ul className={styles.plainList}>
        {records.map(({ id, name }) => (
          <li key={id}>
            <LinkButton href={`/bench/requirement/${id}`}>{name}</LinkButton>
          </li>
        ))}
        {deferred && (
          <li>
            <PaperLink href={`/api/papers/deferrals?aircraft=${file.row.aircraftId}`}>
              {t('What is deferred, to carry aboard')}
            </PaperLink>
          </li>
        )}
      </ul>
    </Section>
  );
}

/** What the drawing has to know; the rest need not travel twice. */
const marked = ({
  id,
  number,
  title,
  station,
  place,
  state,
  severity,
}: AircraftFile['writeUps'][number]) => ({
  id,
  number,
  title,
  station,
  place,
  state,
  severity,
});

const EDGES = { 'no-go': 'red', 'go-with-limits': 'amber', go: 'green' } as const;

/** The usual use in short; every reason with its paragraph, and the other kinds of flight, are one tap away. */
function TodaysAnswer({ file }: { file: AircraftFile }) {
  const t = useWords();
  const usual = file.answers.find((one) => one.id === usualUse(file.row));
  const others = file.answers.filter((one) => one !== usual);
  return (
    <Card edge={usual ? EDGES[usual.answer.outcome] : undefined}>
      {usual && (
        <section className={styles.answer} aria-label={t('Today’s answer')}>
          <div>
            <FreshMark outcome={usual.answer.outcome} size="large" />
          </div>
          <p>
            <Say
              text="<b>{name}</b>, today at {baseIdent}, as of <moment/>"
              parts={{ b: <b />, moment: <Moment at={file.asOf} zone={file.row.zone} clock /> }}
              values={{ name: t(usual.name), baseIdent: file.row.baseIdent }}
            />
          </p>
          <InShort answer={usual.answer} />
          <details className={styles.fold}>
            <summary>{t('All reasons, with the paragraphs')}</summary>
            <VerdictLines lines={usual.answer.lines} />
          </details>
        </section>
      )}
      <details className={styles.fold}>
        <summary>{t('All kinds of flight')}</summary>
        <ul className={styles.kinds}>
          {others.map(({ id, name, answer }) => (
            <li key={id}>
              <details className={styles.kind}>
                <summary>
                  <span>{t(name)}</span>
                  <FreshMark outcome={answer.outcome} size="small" />
                </summary>
                <VerdictLines lines={answer.lines} compact />
              </details>
            </li>
          ))}
        </ul>
      </details>
    </Card>
  );
}

/** As many reasons as fit over the thumb; the rest is counted, never hidden. */
const SHORT = 3;

function InShort({ answer }: { answer: Answer }) {
  const t = useWords();
  const deciding = oneEach(answer.lines.filter(({ effect }) => effect === 'bars' || effect === 'limits'));
  const more = deciding.length - SHORT;
  return (
    <>
      {deciding.length > 0 && <VerdictLines lines={deciding.slice(0, SHORT)} compact />}
      {more > 0 && <p className={styles.headline}>{t('And {more} more, below.', { more })}</p>}
    </>
  );
}

/** The first line about each thing: a write-up that is barred by three paragraphs is one reason in short. */
const oneEach = (lines: readonly Line[]): readonly Line[] =>
  lines.filter(
    ({ about }, index) =>
      !about ||
      lines.findIndex((other) => other.about?.kind === about.kind && other.about.id === about.id) === index,
  );
