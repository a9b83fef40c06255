'use client';

import { useWords } from '#words';
import { useState } from 'react';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Notice } from '@/app/_ui/notice';
import { useCommand } from '@/app/_ui/use-command';
import { type IssuedKey } from '@/lib/feeds/issue-key';
import { SCOPES } from '@/lib/feeds/scopes';
import { issue } from './actions';
import { CheckList } from './check-list';
import styles from './feeds.module.css';
import { ShownOnce } from './shown-once';

interface Typed {
  name: string;
  scopes: string[];
  lastDay: string;
  password: string;
}

const START: Typed = { name: '', scopes: [], lastDay: '', password: '' };
const CHOICES = Object.entries(SCOPES).map(([value, label]) => ({ value, label, says: value }));

/** Issues a key and shows it, this once. A key for the calendar is shown as the address it stands in. */
export function IssueKey() {
  const t = useWords();
  const [issued, setIssued] = useState<IssuedKey | null>(null);
  const command = useCommand({
    action: async (input: Typed & { requestId: string }) => {
      setIssued(null);
      return issue(input);
    },
    start: START,
    onDone: setIssued,
  });
  return (
    <>
      {issued && <Issued issued={issued} />}
      <details className={styles.unfold}>
        <summary>{t('Issue a key')}</summary>
        <CommandForm
          command={command}
          submit={t('Issue the key')}
          pendingWords={t('Issuing…')}
          label={t('Issue a key')}
        >
          <TextField
            name="name"
            label={t('What it is for')}
            hint={t('Such as “Screen in the hangar”.')}
            maxLength={80}
            autoComplete="off"
          />
          <CheckList
            name="scopes"
            label={t('What it opens')}
            hint={t('As little as will do. The calendar has a key of its own.')}
            choices={CHOICES}
          />
          <TextField
            name="lastDay"
            type="date"
            label={t('Last day')}
            optional
            hint={t('Good to the end of this day, UTC. Left empty, until it is ended.')}
          />
          <TextField
            name="password"
            type="password"
            label={t('Your password')}
            hint={t('Asked again, because a key outlasts your session.')}
            autoComplete="off"
          />
        </CommandForm>
      </details>
    </>
  );
}

function Issued({ issued: { key, prefix, forCalendar } }: { issued: IssuedKey }) {
  const t = useWords();
  if (key === null) {
    return (
      <Notice tone="amber" title={t('The key {prefix}… was issued already.', { prefix })}>
        <p>{t('It was shown then and cannot be shown again. If nobody has it, end it and issue another.')}</p>
      </Notice>
    );
  }
  if (forCalendar) {
    return (
      <ShownOnce
        title={t('The calendar is open at this address.')}
        label={t('Address for your calendar program')}
        text={`${window.location.origin}/api/calendar/${key}/maintenance-due.ics`}
      >
        <p>{t('It is shown this once. Whoever has it sees what falls due; treat it as a secret.')}</p>
      </ShownOnce>
    );
  }
  return (
    <ShownOnce title={t('The key is issued.')} label={t('The key')} text={key}>
      <p>
        {t(
          'It is shown this once and kept nowhere. Programs send it as: Authorization: Bearer, then the key.',
        )}
      </p>
    </ShownOnce>
  );
}
