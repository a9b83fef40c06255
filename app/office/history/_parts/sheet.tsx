import { type ReactNode } from 'react';
import { useWords } from '#words';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import Link from '@/app/_ui/link';
import { LinkButton } from '@/app/_ui/button';
import { PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { Acting } from '@/app/bench/acts';
import { readAircraftHistory, type AircraftHistory } from '@/lib/carry-over/read-aircraft-history';
import { type WhoAmI } from '@/lib/people/who-am-i';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { OfficeNav } from '../../_parts/office-nav';
import styles from '../history.module.css';
import { Refused } from './refused';

const SHEETS = [
  { key: '', label: said('What is lacking') },
  { key: 'papers', label: said('Papers aboard') },
  { key: 'last-done', label: said('Inspections') },
  { key: 'directives', label: said('Directives') },
  { key: 'mel', label: said('Minimum equipment list') },
  { key: 'write-ups', label: said('Open write-ups') },
  { key: 'limits', label: said('Limits') },
] as const;
export type Sheet = (typeof SHEETS)[number]['key'];

export interface Shown {
  readonly view: AircraftHistory;
  readonly who: WhoAmI;
  readonly t: Translate;
}

/** One sheet of an aircraft's history: the frame is the same for all, what is on it differs. */
export async function historySheet(id: string, at: Sheet, lead: string, draw: (shown: Shown) => ReactNode) {
  const t = await words();
  const here = `/office/history/${encodeURIComponent(id)}${at === '' ? '' : `/${at}`}`;
  const { ref, who } = await requireActor(here);
  const result = await readAircraftHistory(ref, { aircraftId: id });
  const title = t(SHEETS.find(({ key }) => key === at)?.label ?? '');
  if (!result.ok) return <Refused who={who} title={title} problem={result.problem} />;
  const view = result.value;
  return (
    <Shell who={who}>
      <PageTitle back={{ href: '/office/history', label: t('History') }} lead={t(lead)}>
        {`${view.registration}: ${title}`}
      </PageTitle>
      <OfficeNav at="history" />
      <Sheets aircraftId={view.aircraftId} at={at} />
      <Acting>{draw({ view, who, t })}</Acting>
      {at !== '' && <NextSheet aircraftId={view.aircraftId} at={at} />}
    </Shell>
  );
}

/** Through all sheets one after the other, and at the end to what is still lacking. */
function NextSheet({ aircraftId, at }: { aircraftId: string; at: Sheet }) {
  const t = useWords();
  const next = SHEETS[SHEETS.findIndex(({ key }) => key === at) + 1] ?? SHEETS[0];
  return (
    <div className={styles.next}>
      <LinkButton href={`/office/history/${aircraftId}${next.key === '' ? '' : `/${next.key}`}`}>
        {t('Next: {sheet}', { sheet: t(next.label) })}
      </LinkButton>
    </div>
  );
}

function Sheets({ aircraftId, at }: { aircraftId: string; at: Sheet }) {
  const t = useWords();
  return (
    <nav aria-label={t('History of this aircraft')} className={styles.sheets}>
      <ul>
        {SHEETS.map(({ key, label }) => (
          <li key={key}>
            <Link
              href={`/office/history/${aircraftId}${key === '' ? '' : `/${key}`}`}
              aria-current={key === at ? 'page' : undefined}
            >
              {t(label)}
            </Link>
          </li>
        ))}
      </ul>
    </nav>
  );
}
