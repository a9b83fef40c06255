import { words } from '@/app/_words/words';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { LinkButton } from '@/app/_ui/button';
import { Notice } from '@/app/_ui/notice';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { BackToSetUp } from '@/app/office/_parts/back-to-set-up';
import { mayUse } from '@/lib/access/policy';
import { readBases } from '@/lib/bases/read-bases';
import { Refused } from '../refused';
import { BaseShown } from './base-shown';
import styles from './bases.module.css';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Bases') };
}

interface Props {
  searchParams: Promise<{ added?: string | string[] }>;
}

/** Where the aircraft stand: position, zone, and the sun of today by them. */
export default async function BasesPage({ searchParams }: Props) {
  const t = await words();
  const { ref, who } = await requireActor('/desk/bases');
  const { added } = await searchParams;
  const result = await readBases(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Bases')} problem={result.problem} />;
  const { bases } = result.value;
  const isNew = bases.find(({ ident }) => ident === added);
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/desk', label: t('Fleet board') }}
        lead={t('Night, sunset and the last day of a limit are worked out by position and zone of these.')}
        side={
          mayUse(who.roles, 'base.add') && (
            <LinkButton href="/desk/bases/add" weight="main">
              {t('Add a base')}
            </LinkButton>
          )
        }
      >
        {t('Bases')}
      </PageTitle>
      <BackToSetUp />
      {isNew && (
        <Notice tone="blue" title={t('{ident} is added.', { ident: isNew.ident })}>
          <p>
            {t(
              'Hold its sunrise and sunset below against an almanac once: that tells a slip in its position.',
            )}
          </p>
        </Notice>
      )}
      {bases.length === 0 && <EmptyState title={t('There are no bases here yet.')} />}
      <div className={styles.bases}>
        {bases.map((base) => (
          <BaseShown key={base.id} base={base} mayChange={mayUse(who.roles, 'base.change')} />
        ))}
      </div>
      <p className={styles.soft}>
        {t(
          'Night is that of 14\u00a0CFR\u00a01.1: from the end of evening civil twilight to the beginning of morning civil twilight. The sun is that of a free horizon at sea level.',
        )}
      </p>
    </Shell>
  );
}
