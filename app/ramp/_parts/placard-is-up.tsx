'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '../../_ui/command-form';
import { useCommand } from '../../_ui/use-command';
import { sayPlacardIsUp } from '../actions';

/** Says that the placard has been put up. */
export function PlacardIsUp({ placardId, wording }: { placardId: string; wording: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand({
    action: sayPlacardIsUp,
    start: { placardId },
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm
      command={command}
      submit={t('The placard is up')}
      label={t('Placard {wording}', { wording })}
      wide
    />
  );
}
