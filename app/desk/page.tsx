import { words } from '@/app/_words/words';
import { said } from '@/lib/words/said';
import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse, type Verb } from '@/lib/access/policy';
import { readBoard } from '@/lib/fleet/read-board';
import { Board } from './board';
import { StaysFresh } from '@/app/_ui/freshness';
import { Refused } from './refused';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Fleet board') };
}

/** What is wanted now and then. Only saves a walk to a closed door: each door checks for itself. */
const MORE: readonly { readonly href: string; readonly label: string; readonly verb: Verb }[] = [
  { href: '/desk/insight', label: said('Insight'), verb: 'insight.read' },
  { href: '/desk/walkarounds', label: said('Walkaround lists'), verb: 'walkaround-list.read' },
  { href: '/desk/bases', label: said('Bases'), verb: 'base.read' },
  { href: '/desk/feeds', label: said('Feeds'), verb: 'feeds.read' },
  { href: '/rules-of-the-house', label: said('House rules'), verb: 'house-rule.read' },
];

/** The fleet in one glance: one row an aircraft, today's answer by kind of operation. */
export default async function BoardPage() {
  const t = await words();
  const { ref, who } = await requireActor('/desk');
  const board = await readBoard(ref, { ahead: true });
  if (!board.ok) return <Refused who={who} title={t('Fleet board')} problem={board.problem} />;
  const { asOf, seq, bases, rows } = board.value;
  return (
    <Shell who={who}>
      <PageTitle
        side={
          <ButtonRow>
            <LinkButton href="/desk/plans">{t('Planned flights')}</LinkButton>
            <LinkButton href="/desk/releases">{t('Releases')}</LinkButton>
            <LinkButton href="/desk/flight" weight="main">
              {t('Compose a flight')}
            </LinkButton>
          </ButtonRow>
        }
      >
        {t('Fleet board')}
      </PageTitle>
      <StaysFresh asOf={asOf} zones={bases.map((base) => base.zone)} seq={seq}>
        {rows.length > 0 ? (
          <Board board={board.value} />
        ) : (
          <EmptyState title={t('There are no aircraft here yet.')} />
        )}
      </StaysFresh>
      <nav aria-label={t('More at the desk')}>
        <ButtonRow>
          {MORE.filter(({ verb }) => mayUse(who.roles, verb)).map(({ href, label }) => (
            <LinkButton key={href} href={href}>
              {label}
            </LinkButton>
          ))}
        </ButtonRow>
      </nav>
    </Shell>
  );
}
