'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { bringBackAircraftInput, retireAircraftInput } from '@/lib/aircraft/schema';
import { bringBack, retire } from '../actions';

/** Takes the aircraft out of service. */
export function RetireForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<{ why: string }, unknown>({
    action: (typed) => retire({ ...typed, aircraftId }),
    schema: retireAircraftInput.omit({ aircraftId: true }),
    start: { why: '' },
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm command={command} submit={t('Retire the aircraft')} label={t('Retire the aircraft')}>
      <TextField
        name="why"
        label={t('Why')}
        hint={t('Sold, lease ended, written off. Its records stay; it can be brought back.')}
        maxLength={500}
      />
    </CommandForm>
  );
}

/** Brings a retired aircraft back into service. */
export function BringBackForm({ aircraftId }: { aircraftId: string }) {
  const t = useWords();
  const router = useRouter();
  const command = useCommand<{ why: string }, unknown>({
    action: (typed) => bringBack({ ...typed, aircraftId }),
    schema: bringBackAircraftInput.omit({ aircraftId: true }),
    start: { why: '' },
    onDone: () => router.refresh(),
  });
  return (
    <CommandForm command={command} submit={t('Bring it back')} label={t('Bring it back')}>
      <TextField
        name="why"
        label={t('Why')}
        hint={t('It comes back with the facts it left with. What ran out meanwhile bars.')}
        maxLength={500}
      />
    </CommandForm>
  );
}
