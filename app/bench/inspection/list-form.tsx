'use client';

import { useWords } from '#words';
import { listInput } from '@/lib/inspections/schema';
import { CommandForm } from '../../_ui/command-form';
import { listGiven } from '../actions';
import { SigningPassword } from '../forms/signing-password';
import { yesNo } from '../forms/typed';
import { useAct } from '../forms/use-act';
import { YesNo } from '../forms/yes-no';

interface ListProps {
  readonly inspectionId: string;
  readonly signer: string;
  /** Hash of the open items and placards as shown. */
  readonly seen: string;
  /** Open write-ups that are not deferred: of each the inspector says whether it makes the aircraft unairworthy. */
  readonly asked: readonly { readonly id: string; readonly label: string; readonly standing: string }[];
}

/** The signed, dated list of 43.11(b). */
export function ListForm({ inspectionId, signer, seen, asked }: ListProps) {
  const t = useWords();
  const command = useAct({
    action: async (input: unknown) => listGiven(input),
    schema: listInput,
    start: { standings: Object.fromEntries(asked.map(({ id }) => [id, ''])), password: '' },
    input: (typed) => ({
      ...typed,
      inspectionId,
      seen,
      standings: asked.flatMap(({ id }) => {
        const unairworthy = yesNo(typed.standings[id] ?? '');
        return unairworthy === undefined ? [] : [{ discrepancyId: id, unairworthy }];
      }),
    }),
    done: t('The list is signed. Print it and give it to the owner or operator.'),
  });
  return (
    <CommandForm
      command={command}
      submit={t('Sign the list')}
      pendingWords={t('Signing…')}
      label={t('Sign the list')}
    >
      {asked.map(({ id, label, standing }) => (
        <YesNo
          key={id}
          name={`standings.${id}`}
          label={t('{label}: does it make the aircraft unairworthy?', { label })}
          hint={standing}
        />
      ))}
      <SigningPassword name={signer} />
    </CommandForm>
  );
}
