import { type Metadata } from 'next';
import { requireActor } from '@/app/_session/actor-ref';
import { words } from '@/app/_words/words';
import { FactList, PageTitle } from '@/app/_ui/page';
import { Shell } from '@/app/_ui/shell';
import { mayUse } from '@/lib/access/policy';
import { readOfficeFleet, type OfficeType } from '@/lib/aircraft/read-office-fleet';
import { PROBLEMS } from '@/lib/problems';
import { ASKED_FACTS, type TypeFact } from '@/lib/types/fields';
import { type Translate } from '@/lib/words/translate';
import { OfficeNav } from '../../../_parts/office-nav';
import { Refused } from '../../_parts/refused';
import { ChangeTypeForm } from '../../_parts/type-form';
import { typeAsTyped } from '../../_parts/type-typed';

export async function generateMetadata(): Promise<Metadata> {
  const t = await words();
  return { title: t('Aircraft type') };
}

interface Props {
  params: Promise<{ id: string }>;
}

/** One aircraft type: a form for the manager, the facts for everybody else. */
export default async function TypePage({ params }: Props) {
  const t = await words();
  const { id } = await params;
  const { ref, who } = await requireActor(`/office/fleet/types/${id}`);
  const result = await readOfficeFleet(ref, {});
  const type = result.ok ? result.value.types.find((one) => one.id === id) : undefined;
  if (!result.ok || !type) {
    const problem = result.ok
      ? ({ code: 'not_found', say: PROBLEMS.not_found.say } as const)
      : result.problem;
    return <Refused who={who} title={t('Aircraft type')} problem={problem} />;
  }
  return (
    <Shell who={who}>
      <PageTitle
        back={{ href: '/office/fleet', label: t('Fleet') }}
        lead={
          type.aircraft.length > 0
            ? t('What you change here changes the answers of {aircraft}.', {
                aircraft: type.aircraft.join(', '),
              })
            : t('No aircraft of this type is in service.')
        }
      >
        {type.name}
      </PageTitle>
      <OfficeNav at="fleet" />
      {mayUse(who.roles, 'type.change') ? (
        <ChangeTypeForm typeId={id} start={typeAsTyped(type)} signer={who.name} />
      ) : (
        <FactList facts={factsOf(type, t)} />
      )}
    </Shell>
  );
}

const factsOf = (type: OfficeType, t: Translate) =>
  (Object.keys(ASKED_FACTS) as TypeFact[]).map((fact) => ({
    name: t(ASKED_FACTS[fact].label),
    value: inWords(type[fact], t),
  }));

function inWords(value: boolean | number | string | null, t: Translate): string {
  if (value === null) return t('Not known yet');
  if (typeof value === 'boolean') return value ? t('Yes') : t('No');
  return String(value);
}
