'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { LinkButton } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { useCommand } from '@/app/_ui/use-command';
import { type LinkMade } from '@/lib/people/invite-person';
import { type BaseChoice } from '@/lib/people/read-people';
import { invitePersonInput } from '@/lib/people/schema';
import { invite } from '../actions';
import { HandedOver } from '../handed-over';
import { LinkSheet } from '../link-sheet';
import { PersonFields } from '../person-fields';
import styles from '../people.module.css';

interface Typed {
  name: string;
  email: string;
  roles: string[];
  homeBaseId: string;
  handedOver: string;
}

interface Props {
  readonly bases: readonly BaseChoice[];
  readonly sendsLetters: boolean;
  readonly zone: string;
}

/** Enters somebody new and hands over the link by which they choose their password. */
export function InviteForm({ bases, sendsLetters, zone }: Props) {
  const t = useWords();
  const [made, setMade] = useState<{ link: LinkMade; name: string } | null>(null);
  const start: Typed = {
    name: '',
    email: '',
    roles: [],
    homeBaseId: bases.length === 1 ? (bases[0]?.id ?? '') : '',
    handedOver: '',
  };
  const command = useCommand<Typed, { link: LinkMade; name: string }>({
    action: async (input) => {
      const result = await invite(input);
      return result.ok ? { ok: true, value: { link: result.value, name: input.name } } : result;
    },
    schema: invitePersonInput,
    start,
    onDone: setMade,
  });
  if (made) {
    return (
      <div className={styles.acts}>
        <LinkSheet link={made.link} name={made.name} zone={zone} />
        <div className="not-on-paper">
          <LinkButton href={`/office/people/${made.link.personId}`} weight="main">
            {t('Next: certificates of {name}', { name: made.name })}
          </LinkButton>
        </div>
      </div>
    );
  }
  return (
    <CommandForm
      command={command}
      submit={t('Invite')}
      pendingWords={t('Inviting…')}
      label={t('Invite somebody')}
    >
      <PersonFields bases={bases} />
      <HandedOver sendsLetters={sendsLetters} />
    </CommandForm>
  );
}
