import { English, useWords } from '#words';
import { words } from '@/app/_words/words';
import { type Translate } from '@/lib/words/translate';
import { type Metadata } from 'next';
import Link from '../_ui/link';
import { readBoard, type BoardRow } from '@/lib/fleet/read-board';
import { requireActor } from '../_session/actor-ref';
import { FreshMark, StaysFresh } from '../_ui/freshness';
import { OutcomeMark } from '../_ui/marks';
import { EmptyState, PageTitle } from '../_ui/page';
import { Shell } from '../_ui/shell';
import { OwnAlarms } from './_parts/own-alarms';
import { OwnFlights } from './_parts/own-flights';
import { PlainProblem } from './_parts/plain-problem';
import styles from './_parts/ramp.module.css';
import { usualCell } from './_parts/usual-use';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Ramp') };
}
export const dynamic = 'force-dynamic';

interface Props {
  searchParams: Promise<{ base?: string | string[] }>;
}

/**
 * Which aircraft one is about to walk round, and what came in about one's own releases. Without contact every way into the
 * phone's own pages stays open; only the answers become not known.
 */
export default async function RampPage({ searchParams }: Props) {
  const t = await words();
  const { ref, who } = await requireActor('/ramp');
  const board = await readBoard(ref, {});
  if (!board.ok) return <PlainProblem who={who} problem={board.problem} />;
  const { bases, rows, asOf, seq } = board.value;
  const asked = (await searchParams).base;
  const base = bases.find((one) => one.ident === asked) ?? null;
  const shown = base ? rows.filter((row) => row.baseId === base.id) : rows;
  const zones = [...new Set((base ? [base] : bases).map(({ zone }) => zone))];
  return (
    <Shell who={who}>
      <div className={styles.column}>
        <PageTitle
          lead={
            <Link href="/ramp/mine" className={styles.lineLink}>
              {t('What became of my write-ups{which}', {
                which: who.unreadNews ? t(' ({unreadNews} new)', { unreadNews: who.unreadNews }) : '',
              })}
            </Link>
          }
        >
          {t('Choose the aircraft')}
        </PageTitle>
        <StaysFresh asOf={asOf} zones={zones.length > 0 ? zones : ['UTC']} seq={seq}>
          <OwnAlarms actor={ref} />
          <OwnFlights actor={ref} />
          {bases.length > 1 && (
            <nav aria-label={t('Base')}>
              <ul className={styles.filter}>
                <BaseLink href="/ramp" label={t('All bases')} chosen={base === null} />
                {bases.map(({ id, ident }) => (
                  <BaseLink
                    key={id}
                    href={`/ramp?base=${encodeURIComponent(ident)}`}
                    label={ident}
                    chosen={base?.id === id}
                  />
                ))}
              </ul>
            </nav>
          )}
          {shown.length === 0 ? (
            <EmptyState title={t('No aircraft here.')} />
          ) : (
            <ul className={styles.rows}>
              {shown.map((row) => (
                <li key={row.aircraftId}>
                  <AircraftLink row={row} />
                </li>
              ))}
            </ul>
          )}
        </StaysFresh>
        <p>
          <Link href="/rules-of-the-house" className={styles.lineLink}>
            {t('House rules')}
          </Link>
        </p>
      </div>
    </Shell>
  );
}

function BaseLink({ href, label, chosen }: { href: string; label: string; chosen: boolean }) {
  return (
    <li>
      <Link href={href} aria-current={chosen ? 'true' : undefined}>
        {label}
      </Link>
    </li>
  );
}

function AircraftLink({ row }: { row: BoardRow }) {
  const t = useWords();
  const cell = usualCell(row);
  return (
    <Link href={`/ramp/${row.aircraftId}`} className={styles.row}>
      <h2>{row.registration}</h2>
      <span className={styles.rowMark}>
        {cell ? <FreshMark outcome={cell.outcome} /> : <OutcomeMark outcome={null} />}
      </span>
      {cell?.headline && (
        <span className={`${styles.rowWhole} ${styles.headline}`}>
          <English>{cell.headline}</English>
        </span>
      )}
      <span className={`${styles.rowWhole} ${styles.soft}`}>
        {row.typeName}, {row.baseIdent}. {cell ? `${t(cell.name)}. ` : ''}
        {row.openWriteUps === 0 ? t('Nothing written up.') : `${openInWords(t, row)}.`}
      </span>
    </Link>
  );
}

const openInWords = (t: Translate, { openWriteUps, deferred }: BoardRow): string =>
  [
    openWriteUps > deferred
      ? t('{openWriteUps, plural, one {# write-up} other {# write-ups}} open', {
          openWriteUps: openWriteUps - deferred,
        })
      : null,
    deferred > 0
      ? t('{deferred, plural, one {# write-up} other {# write-ups}} deferred', { deferred })
      : null,
  ]
    .filter((part) => part !== null)
    .join(', ');
