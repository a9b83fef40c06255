'use client';

import { useWords } from '#words';
import { placePlacardInput } from '@/lib/determinations/schema';
import { CommandForm } from '../../_ui/command-form';
import { placardIsUp } from '../actions';
import { useAct } from './use-act';

/** Says that a placard is in its place. */
export function PlacardForm({ placardId }: { placardId: string }) {
  const t = useWords();
  const command = useAct({
    action: placardIsUp,
    schema: placePlacardInput,
    start: {},
    input: () => ({ placardId }),
    done: t('The placard is recorded as up.'),
  });
  return <CommandForm command={command} submit={t('The placard is up')} label={t('Placard is up')} />;
}
