'use client';

import { useWords } from '#words';
import { CommandForm } from '@/app/_ui/command-form';
import { SelectField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { LANGUAGE_NAMES, LANGUAGES } from '@/lib/words/language';
import { changeSettings } from './actions';

interface Props {
  readonly language: string | null;
  readonly units: string | null;
}

/** Language and units of one's screens; what is signed, the engine's reasons and the law stay in English. */
export function SettingsForm({ language, units }: Props) {
  const t = useWords();
  const command = useCommand({
    action: changeSettings,
    start: { language: language ?? '', units: units ?? '' },
    afterDone: 'keep',
    // A full load: every word on the page is drawn anew.
    onDone: () => window.location.reload(),
  });
  return (
    <CommandForm command={command} submit={t('Keep these')} label={t('Language and units')}>
      <SelectField
        name="language"
        label={t('Language')}
        hint={t('The reasons of the engine, the law and what is signed stay in English.')}
        chooseWords={t('As this browser asks')}
        choices={LANGUAGES.map((value) => ({ value, label: LANGUAGE_NAMES[value] }))}
      />
      <SelectField
        name="units"
        label={t('Units')}
        hint={t('For reading only. Hours, and whatever is signed, stay as they are entered.')}
        chooseWords={t('As your school has them')}
        choices={[
          { value: 'us-customary', label: t('US customary') },
          { value: 'metric', label: t('Metric') },
        ]}
      />
    </CommandForm>
  );
}
