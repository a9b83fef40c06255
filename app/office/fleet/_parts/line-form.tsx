'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { CommandForm } from '@/app/_ui/command-form';
import { TextField } from '@/app/_ui/fields';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { LINE_STATEMENT, REMOVAL_STATEMENT } from '@/lib/equipment/line';
import { enterLineInput, removeLineInput } from '@/lib/equipment/schema';
import { saveLine, takeOff } from '../actions';
import { WhatDocumentsSay, WhatItIs } from './line-fields';
import { type LineAsTyped } from './line-typed';
import { Signing } from './signing';

interface Typed {
  line: LineAsTyped;
  source: string;
  password: string;
}

/** A line to be entered or changed; either way it is signed. */
export function LineForm(props: {
  aircraftId: string;
  equipmentId: string | null;
  start: LineAsTyped;
  signer: string;
}) {
  const t = useWords();
  const { aircraftId, equipmentId, start, signer } = props;
  const router = useRouter();
  const command = useCommand<Typed, { name: string }>({
    action: (typed) => saveLine({ ...typed, aircraftId, equipmentId }),
    schema: enterLineInput.omit({ aircraftId: true, equipmentId: true }),
    start: { line: start, source: '', password: '' },
    afterDone: 'keep',
    onDone: ({ name }) =>
      router.push(`/office/fleet/aircraft/${aircraftId}/equipment?signed=${encodeURIComponent(name)}`),
  });
  return (
    <CommandForm
      command={command}
      submit={equipmentId === null ? t('Sign and add the line') : t('Sign the line as it stands here')}
      label={t('Line of the equipment list')}
    >
      <Section title={t('The item')}>
        <WhatItIs at="line." />
      </Section>
      <Section title={t('What the aircraft’s documents say')}>
        <WhatDocumentsSay at="line." />
      </Section>
      <Section title={t('Where it comes from')}>
        <Signing
          statement={LINE_STATEMENT}
          signer={signer}
          hint={t('For example the equipment list or the flight manual, with revision or date.')}
        />
      </Section>
    </CommandForm>
  );
}

/** Takes the line off the list, signed. */
export function RemoveForm(props: { aircraftId: string; equipmentId: string; signer: string }) {
  const t = useWords();
  const { aircraftId, equipmentId, signer } = props;
  const router = useRouter();
  const command = useCommand<{ why: string; source: string; password: string }, { name: string }>({
    action: (typed) => takeOff({ ...typed, equipmentId }),
    schema: removeLineInput.omit({ equipmentId: true }),
    start: { why: '', source: '', password: '' },
    afterDone: 'keep',
    onDone: ({ name }) =>
      router.push(`/office/fleet/aircraft/${aircraftId}/equipment?removed=${encodeURIComponent(name)}`),
  });
  return (
    <CommandForm command={command} submit={t('Sign and take it off')} label={t('Take it off the list')}>
      <TextField name="why" label={t('Why')} maxLength={500} />
      <Signing
        statement={REMOVAL_STATEMENT}
        signer={signer}
        hint={t('For example the work entry or the revised equipment list, with its date.')}
      />
    </CommandForm>
  );
}
