import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { LinkButton } from '@/app/_ui/button';
import { EmptyState, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readOfficeFleet } from '@/lib/aircraft/read-office-fleet';
import { PROBLEMS } from '@/lib/problems';
import { OfficeNav } from '../../../_parts/office-nav';
import { AddAircraftForm } from '../../_parts/aircraft-form';
import { choicesOf } from '../../_parts/choices';
import { Refused } from '../../_parts/refused';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Add an aircraft') };
}

/** A new aircraft. */
export default async function AddAircraftPage() {
  const t = await words();
  const { ref, who } = await requireActor('/office/fleet/aircraft/add');
  const result = await readOfficeFleet(ref, {});
  if (!result.ok) return <Refused who={who} title={t('Add an aircraft')} problem={result.problem} />;
  if (!mayUse(who.roles, 'aircraft.add')) {
    const problem = { code: 'not_allowed', say: PROBLEMS.not_allowed.say } as const;
    return <Refused who={who} title={t('Add an aircraft')} problem={problem} />;
  }
  const { types, bases } = result.value;
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/fleet', label: t('Fleet') }}
        lead={t(
          'It is no go until its equipment, papers and inspections are entered too. Each page says what is missing.',
        )}
      >
        {t('Add an aircraft')}
      </PageTitle>
      <OfficeNav at="fleet" />
      {types.length === 0 || bases.length === 0 ? (
        <EmptyState title={t('An aircraft needs a type and a base first.')}>
          {types.length === 0 && <LinkButton href="/office/fleet/types/add">{t('Add a type')}</LinkButton>}
          {bases.length === 0 && <LinkButton href="/desk/bases/add">{t('Add a base')}</LinkButton>}
        </EmptyState>
      ) : (
        <AddAircraftForm choices={choicesOf(result.value)} signer={who.name} />
      )}
    </Shell>
  );
}
