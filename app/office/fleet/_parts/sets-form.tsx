'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CheckList } from '@/app/_ui/check-list';
import { CommandForm } from '@/app/_ui/command-form';
import { useCommand } from '@/app/_ui/use-command';
import { beginSetInput } from '@/lib/equipment/schema';
import { SET_NAMES, SET_WORDS } from '@/lib/equipment/starting-sets';
import { putSet } from '../actions';

/** Puts starting sets on the list; nothing of them is trusted before it is confirmed. */
export function SetsForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<{ sets: string[] }, { added: number }>({
    action: (typed) => putSet({ ...typed, aircraftId }),
    schema: beginSetInput.omit({ aircraftId: true }),
    start: { sets: [] },
    onDone: () => router.push(`/office/fleet/aircraft/${aircraftId}/equipment/confirm`),
  });
  return (
    <CommandForm command={command} submit={t('Put them on the list')} label={t('Starting sets')}>
      <CheckList
        name="sets"
        label={t('For which kinds of operation?')}
        choices={SET_NAMES.map((value) => ({
          value,
          label: t(SET_WORDS[value].title),
          says: t(SET_WORDS[value].hint),
        }))}
      />
    </CommandForm>
  );
}
