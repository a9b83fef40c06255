import { type Metadata } from 'next';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { said } from '@/lib/words/said';
import { Lacking } from '../../_parts/lacking';
import { historySheet } from '../_parts/sheet';
import styles from '../history.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('History of an aircraft') };
}

const LEAD = said('The engine says what it still needs. Follow it from here, or take the sheets one by one.');

/** One aircraft: what the engine still lacks, with the way to where it is entered. */
export default async function AircraftHistoryPage({ params }: { params: Promise<{ id: string }> }) {
  const { id } = await params;
  return historySheet(id, '', LEAD, ({ view, t }) => (
    <>
      <Lacking aircraftId={view.aircraftId} />
      <div className={styles.acts}>
        <LinkButton href={`/bench/aircraft/${view.aircraftId}`}>{t('The aircraft at the bench')}</LinkButton>
        <LinkButton href={`/office/fleet/aircraft/${view.aircraftId}`}>
          {t('The aircraft in the office')}
        </LinkButton>
      </div>
    </>
  ));
}
