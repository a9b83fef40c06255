import { type RequirementView } from '@/lib/inspections/read-requirement';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { DateText } from '../../../_ui/moment';
import { Card, Section } from '../../../_ui/page';
import { Act, ActList } from '../../acts';
import { DisposeForm } from '../../inspection/dispose-form';

/** An inspection entered from papers that says nothing of a deferred item: what became of it is owed still. */
export function OwedDispositions({ view, mayDispose }: { view: RequirementView; mayDispose: boolean }) {
  if (view.owedDispositions.length === 0) return null;
  return (
    <Section title="Deferred items it says nothing about">
      {view.owedDispositions.map((item) => (
        <Card key={item.deferralId} edge="red">
          <p>
            <Link href={`/bench/write-up/${item.discrepancyId}`}>
              {item.number} {item.title}
            </Link>
            : the inspection of <DateText date={item.inspectedOn} /> passed without a word on it. No go until
            it is repaired, replaced, removed or inspected.
          </p>
          <Cite cite="14cfr91.405(c)" />
          {mayDispose && (
            <ActList>
              <Act title={`Say what becomes of ${item.number}`}>
                <DisposeForm
                  deferralId={item.deferralId}
                  at={{ inspectionId: null, complianceId: item.complianceId }}
                  signer={view.me.name}
                  mayBeRemoved={item.method === 'removed' && item.removalSigned}
                  together={item.together}
                />
              </Act>
            </ActList>
          )}
        </Card>
      ))}
    </Section>
  );
}
