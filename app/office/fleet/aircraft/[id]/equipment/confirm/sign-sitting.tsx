'use client';

import { useWords } from '#words';
import { useEffect, useRef, useState } from 'react';
import { SigningPassword } from '@/app/bench/forms/signing-password';
import { SignedWords } from '@/app/office/_parts/vouching';
import { Button } from '@/app/_ui/button';
import { CommandForm } from '@/app/_ui/command-form';
import { Notice } from '@/app/_ui/notice';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { LINE_STATEMENT, REMOVAL_STATEMENT } from '@/lib/equipment/line';
import { type LineView } from '@/lib/equipment/read-equipment';
import { signLines } from '../../../../actions';
import styles from '../../../../fleet.module.css';
import { type Decided } from './draft';

interface Signed {
  readonly confirmed: number;
  readonly removed: number;
  readonly left: number;
}

/** Taken off the list, or on it with none installed. */
const isNotInstalled = ({ kind, line }: Decided): boolean =>
  kind === 'not-installed' || Number(line?.installed) === 0;

/** What was decided so far, and the one password for all of it. Each item becomes a signed record of its own. */
export function SignSitting(props: {
  aircraftId: string;
  lines: readonly LineView[];
  decided: readonly Decided[];
  signer: string;
  takeFocus: boolean;
  onTakeBack: (equipmentId: string) => void;
  onDone: () => void;
}) {
  const t = useWords();
  const { aircraftId, lines, decided, signer, takeFocus, onTakeBack, onDone } = props;
  const box = useRef<HTMLDivElement>(null);
  const [signed, setSigned] = useState<Signed | null>(null);
  const command = useCommand<{ password: string }, Signed>({
    action: (typed) => signLines({ ...typed, aircraftId, decisions: decided }),
    start: { password: '' },
    onDone: (value) => {
      setSigned(value);
      onDone();
    },
  });
  useEffect(() => {
    if (takeFocus) box.current?.focus();
  }, [takeFocus]);
  const removed = decided.filter(({ kind }) => kind === 'not-installed').length;
  const gone = decided.filter(isNotInstalled).length;
  const agree = decided.length - gone;
  const nameOf = (item: Decided) =>
    item.line?.name ?? lines.find(({ id }) => id === item.equipmentId)?.name ?? '';
  return (
    <div ref={box} tabIndex={-1} className={styles.sign}>
      <Section title={t('Sign for what you decided')}>
        {signed && <Notice tone="blue" title={t('Signed.')} />}
        <CommandForm
          command={command}
          submit={t('{n, plural, one {Sign for # item} other {Sign for # items}}', { n: decided.length })}
          label={t('Sign')}
        >
          <details className={styles.fold}>
            <summary>{t('{agree} agree, {gone} not installed', { agree, gone })}</summary>
            <ul className={styles.decided}>
              {decided.map((item) => (
                <li key={item.equipmentId}>
                  {nameOf(item)}: {isNotInstalled(item) ? t('not installed') : t('agrees')} ({item.source}){' '}
                  <Button weight="quiet" onClick={() => onTakeBack(item.equipmentId)}>
                    {t('Decide again')}
                  </Button>
                </li>
              ))}
            </ul>
          </details>
          <SignedWords
            statements={[
              ...(decided.length > removed ? [LINE_STATEMENT] : []),
              ...(removed > 0 ? [REMOVAL_STATEMENT] : []),
            ]}
          />
          <SigningPassword name={signer} />
        </CommandForm>
      </Section>
    </div>
  );
}
