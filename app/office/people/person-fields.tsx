'use client';

import { useWords } from '#words';
import { SelectField, TextField } from '@/app/_ui/fields';
import { CheckList } from '@/app/_ui/check-list';
import { ROLES } from '@/lib/access/policy';
import { type BaseChoice } from '@/lib/people/read-people';
import { ROLE_SAYS, ROLE_WORDS } from './words';

/** What is known of every person: name, address, roles, home base. */
export function PersonFields({ bases }: { bases: readonly BaseChoice[] }) {
  const t = useWords();
  return (
    <>
      <TextField
        name="name"
        label={t('Name')}
        hint={t('As it stands on the certificates: it goes into signed records.')}
        maxLength={80}
        autoComplete="off"
      />
      <TextField
        name="email"
        type="email"
        label={t('E-mail address')}
        hint={t('They sign in with it.')}
        maxLength={200}
        autoComplete="off"
        autoCapitalize="none"
        spellCheck={false}
      />
      <CheckList
        name="roles"
        label={t('Roles')}
        hint={t('A role opens screens. Whether a signature counts is judged by the certificates.')}
        choices={ROLES.map((role) => ({ value: role, label: t(ROLE_WORDS[role]), says: t(ROLE_SAYS[role]) }))}
      />
      <SelectField
        name="homeBaseId"
        label={t('Home base')}
        optional
        chooseWords={t('None')}
        choices={bases.map(({ id, ident, name }) => ({ value: id, label: `${ident}, ${name}` }))}
      />
    </>
  );
}
