'use client';

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
        <summary>Issue a key</summary>
        <CommandForm command={command} submit="Issue the key" pendingWords="Issuing…" label="Issue a key">
          <TextField
            name="name"
            label="What it is for"
            hint="Such as “Screen in the hangar”."
            maxLength={80}
            autoComplete="off"
          />
          <CheckList
            name="scopes"
            label="What it opens"
            hint="As little as will do. The calendar has a key of its own."
            choices={CHOICES}
          />
          <TextField
            name="lastDay"
            type="date"
            label="Last day"
            optional
            hint="Good to the end of this day, UTC. Left empty, until it is ended."
          />
          <TextField
            name="password"
            type="password"
            label="Your password"
            hint="Asked again, because a key outlasts your session."
            autoComplete="off"
          />
        </CommandForm>
      </details>
    </>
  );
}

function Issued({ issued: { key, prefix, forCalendar } }: { issued: IssuedKey }) {
  if (key === null) {
    return (
      <Notice tone="amber" title={`The key ${prefix}… was issued already.`}>
        <p>It was shown then and cannot be shown again. If nobody has it, end it and issue another.</p>
      </Notice>
    );
  }
  if (forCalendar) {
    return (
      <ShownOnce
        title="The calendar is open at this address."
        label="Address for your calendar program"
        text={`${window.location.origin}/api/calendar/${key}/maintenance-due.ics`}
      >
        <p>It is shown this once. Whoever has it sees what falls due; treat it as a secret.</p>
      </ShownOnce>
    );
  }
  return (
    <ShownOnce title="The key is issued." label="The key" text={key}>
      <p>It is shown this once and kept nowhere. Programs send it as: Authorization: Bearer, then the key.</p>
    </ShownOnce>
  );
}
