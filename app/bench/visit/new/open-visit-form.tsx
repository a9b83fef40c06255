'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { z } from 'zod';
import { type VisitChoices } from '@/lib/visits/read-choices';
import { openVisitInput } from '@/lib/visits/schema';
import { type Result } from '@/lib/problems';
import { CommandForm } from '../../../_ui/command-form';
import { useCommand } from '../../../_ui/use-command';
import { groupIntoVisit } from '../../actions';
import { AboutVisit, tickedIn, WhatToDo, type Ticks } from '../visit-fields';

interface Typed {
  title: string;
  plannedOn: string;
  words: string;
  writeUps: Ticks;
  requirements: Ticks;
}

/** Opens a visit and goes to it. `ticked`: the write-ups ticked in the queue. */
export function OpenVisitForm({ choices, ticked }: { choices: VisitChoices; ticked: readonly string[] }) {
  const t = useWords();
  const router = useRouter();
  const asInput = ({
    title,
    plannedOn,
    words,
    writeUps,
    requirements,
    requestId,
  }: Typed & { requestId: string }) => ({
    requestId,
    aircraftId: choices.aircraftId,
    title,
    words,
    plannedOn: plannedOn || null,
    discrepancyIds: tickedIn(writeUps),
    requirementIds: tickedIn(requirements),
  });
  const command = useCommand<Typed, { visitId: string }>({
    action: async (typed) => (await groupIntoVisit(asInput(typed))) as Result<{ visitId: string }>,
    schema: z.preprocess((typed) => asInput(typed as Typed & { requestId: string }), openVisitInput),
    start: {
      title: '',
      plannedOn: '',
      words: '',
      writeUps: Object.fromEntries(choices.writeUps.map(({ id }) => [id, ticked.includes(id)])),
      requirements: Object.fromEntries(choices.due.map(({ requirementId }) => [requirementId, false])),
    },
    afterDone: 'keep',
    onDone: ({ visitId }) => router.push(`/bench/visit/${visitId}`),
  });
  return (
    <CommandForm command={command} submit={t('Open the visit')} label={t('Open a visit')}>
      <AboutVisit />
      <WhatToDo
        choices={choices}
        legend={t('Write-ups of {registration}', { registration: choices.registration })}
      />
    </CommandForm>
  );
}
