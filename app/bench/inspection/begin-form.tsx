'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { beginInspectionInput } from '@/lib/inspections/schema';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { CommandForm } from '../../_ui/command-form';
import { ChoiceGroup } from '../../_ui/fields';
import { inspectionBegun } from '../actions';
import { useAct } from '../forms/use-act';
import { orNull } from '../forms/typed';

/** What recurs on the aircraft, as far as an inspection can answer it. */
export interface Inspectable {
  readonly id: string;
  readonly kind: RequirementKind;
  readonly name: string;
}

const ANSWERS: Readonly<Record<string, readonly RequirementKind[]>> = {
  annual: ['annual', 'hundred-hour'],
  'hundred-hour': ['hundred-hour'],
};

/**
 * Begins an annual or 100-hour inspection, where the aircraft is kept on one, and goes to its page. From then on the
 * aircraft does not fly.
 */
export function BeginInspection(props: {
  aircraftId: string;
  requirements: readonly Inspectable[];
  visitId?: string;
}) {
  const t = useWords();
  const { aircraftId, requirements, visitId } = props;
  const router = useRouter();
  const answeredBy = (kind: string) => requirements.filter((one) => ANSWERS[kind]?.includes(one.kind));
  const command = useAct({
    action: async (input: unknown) => {
      const result = await inspectionBegun(input);
      if (result.ok) router.push(`/bench/inspection/${result.value.inspectionId}`);
      return result;
    },
    schema: beginInspectionInput,
    start: { kind: '' },
    input: (typed) => ({
      aircraftId,
      kind: orNull(typed.kind),
      requirementIds: answeredBy(typed.kind).map(({ id }) => id),
      visitId: visitId ?? null,
    }),
    done: t('The inspection is begun. The aircraft does not fly until every part is signed.'),
  });
  const kinds = ['annual', 'hundred-hour'].filter((kind) => requirements.some((one) => one.kind === kind));
  if (kinds.length === 0) {
    return (
      <p>{t('Neither an annual nor a 100-hour inspection is listed for this aircraft. Add it first.')}</p>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={t('Begin the inspection')}
      pendingWords={t('Beginning…')}
      label={t('Begin inspection')}
    >
      <ChoiceGroup
        name="kind"
        label={t('Which inspection?')}
        choices={kinds.map((kind) => ({
          value: kind,
          label: kind === 'annual' ? t('Annual') : t('100-hour'),
          hint:
            kind === 'annual'
              ? t('Answers: {answeredBy}. Signed under an inspection authorization (14 CFR 65.95(a)(2)).', {
                  answeredBy: answeredBy(kind)
                    .map(({ name }) => name)
                    .join(', '),
                })
              : t('Each half signed by a mechanic rated for it (14 CFR 65.85, 65.87).'),
        }))}
      />
    </CommandForm>
  );
}
