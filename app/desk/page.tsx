import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { ButtonRow, LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { readBoard } from '@/lib/fleet/read-board';
import { Board } from './board';
import { StaysFresh } from './freshness';
import { Refused } from './refused';

export const metadata: Metadata = { title: 'Fleet board' };

/** The fleet in one glance: one row an aircraft, today's answer by kind of operation. */
export default async function BoardPage() {
  const { ref, who } = await requireActor('/desk');
  const board = await readBoard(ref, {});
  if (!board.ok) return <Refused who={who} title="Fleet board" problem={board.problem} />;
  const { asOf, bases, rows } = board.value;
  return (
    <Shell who={who}>
      <PageTitle
        side={
          <ButtonRow>
            <LinkButton href="/desk/plans">Planned flights</LinkButton>
            <LinkButton href="/desk/walkarounds">Walkaround lists</LinkButton>
            <LinkButton href="/desk/releases">Releases</LinkButton>
            <LinkButton href="/desk/flight" weight="main">
              Compose a flight
            </LinkButton>
          </ButtonRow>
        }
      >
        Fleet board
      </PageTitle>
      <StaysFresh asOf={asOf} zones={bases.map((base) => base.zone)}>
        {rows.length > 0 ? (
          <Board board={board.value} />
        ) : (
          <EmptyState title="There are no aircraft here yet." />
        )}
      </StaysFresh>
    </Shell>
  );
}
