import { Say, useWords } from '#words';
import { type RequirementView } from '@/lib/inspections/read-requirement';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { DateText } from '../../../_ui/moment';
import { Card, Section } from '../../../_ui/page';
import { Act, ActList } from '../../acts';
import { DisposeForm } from '../../inspection/dispose-form';

/** An inspection entered from papers that says nothing of a deferred item: what became of it is owed still. */
export function OwedDispositions({ view, mayDispose }: { view: RequirementView; mayDispose: boolean }) {
  const t = useWords();
  if (view.owedDispositions.length === 0) return null;
  return (
    <Section title={t('Deferred items it says nothing about')}>
      {view.owedDispositions.map((item) => (
        <Card key={item.deferralId} edge="red">
          <p>
            <Say
              text="<link>{number} {title}</link>: the inspection of"
              parts={{ link: <Link href={`/bench/write-up/${item.discrepancyId}`} /> }}
              values={{ number: item.number, title: item.title }}
            />{' '}
            <DateText date={item.inspectedOn} />{' '}
            {t('passed without a word on it. No go until it is repaired, replaced, removed or inspected.')}
          </p>
          <Cite cite="14cfr91.405(c)" />
          {mayDispose && (
            <ActList>
              <Act title={t('Say what becomes of {number}', { number: item.number })}>
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
