'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type PersonPage } from '@/lib/people/read-person';
import { changePersonInput } from '@/lib/people/schema';
import { change } from '../actions';
import { PersonFields } from '../person-fields';

interface Typed {
  name: string;
  email: string;
  roles: string[];
  homeBaseId: string;
}

/** Name, address, roles and home base of somebody who is here. */
export function ChangeForm({ person }: { person: PersonPage }) {
  const t = useWords();
  const router = useRouter();
  const [saved, setSaved] = useState('');
  const command = useCommand<Typed, { changed: string[] }>({
    action: (typed) => {
      setSaved('');
      return change({ ...typed, personId: person.id });
    },
    schema: changePersonInput.omit({ personId: true }),
    start: {
      name: person.name,
      email: person.email,
      roles: [...person.roles],
      homeBaseId: person.base?.id ?? '',
    },
    afterDone: 'keep',
    onDone: ({ changed }) => {
      setSaved(changed.length > 0 ? t('Saved.') : t('Nothing was different.'));
      router.refresh();
    },
  });
  return (
    <CommandForm
      command={command}
      submit={t('Save')}
      pendingWords={t('Saving…')}
      label={t('Change this person')}
    >
      <PersonFields bases={person.bases} />
      {saved && <Notice tone="blue" title={saved} />}
    </CommandForm>
  );
}
