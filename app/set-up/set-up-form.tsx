'use client';

import { useWords } from '#words';
import { useCallback } from 'react';
import { useFormContext } from 'react-hook-form';
import { knock } from '@/app/_session/knock';
import { AirportSearch } from '@/app/desk/bases/airport-search';
import { EMPTY_BASE } from '@/app/desk/bases/base-typed';
import styles from '@/app/desk/bases/bases.module.css';
import { ZoneFields } from '@/app/desk/bases/zone-fields';
import { CommandForm } from '@/app/_ui/command-form';
import { YesNo } from '@/app/bench/forms/yes-no';
import { ChoiceGroup, TextField } from '@/app/_ui/fields';
import { tellSessionChanged } from '@/app/_ui/live/line';
import { Section } from '@/app/_ui/page';
import { useCommand } from '@/app/_ui/use-command';
import { type SetUpDone } from '@/lib/set-up/set-up';
import { setUpInput } from '@/lib/set-up/schema';
import { findAirportsHere, proposeZoneHere, sendSetUp } from './actions';

const START = {
  ...EMPTY_BASE,
  // Asked at the first step after this, where there is room to explain it.
  repairAvailable: 'not-said',
  transponderAirspace: 'not-said',
  adsbAirspace: 'not-said',
  controlledAirspace: 'not-said',
  operatorName: '',
  part141: '',
  units: '',
  personName: '',
  email: '',
  password: '',
};
type Typed = typeof START;

/** One form, sent once. Then its sender is signed in and goes on at the office. */
export function SetUpForm({ token }: { token: string }) {
  const t = useWords();
  const command = useCommand<Typed, SetUpDone>({
    action: async (typed) => {
      const result = await sendSetUp({ ...typed, token });
      if (result.ok) await goOn(typed.email, typed.password);
      return result;
    },
    schema: setUpInput.omit({ token: true }),
    start: START,
    afterDone: 'keep',
  });
  return (
    <CommandForm
      command={command}
      submit={t('Set up')}
      pendingWords={t('Setting up…')}
      label={t('Set up')}
      wide
    >
      <Section title={t('The school or club')}>
        <TextField name="operatorName" label={t('Its name')} maxLength={120} autoComplete="organization" />
        <YesNo
          name="part141"
          label={t('Is it certificated under part 141?')}
          hint={t('Then a student’s solo needs the 100-hour inspection as well (141.39).')}
          third={{ value: 'not-said', label: t('Not known') }}
        />
        <ChoiceGroup
          name="units"
          label={t('Units')}
          hint={t('For what is shown and typed. Everybody can choose other ones for themselves.')}
          sideBySide
          choices={[
            { value: 'us-customary', label: t('US customary (gal, lb, °F)') },
            { value: 'metric', label: t('Metric (l, kg, °C)') },
          ]}
        />
      </Section>
      <Section title={t('The home base')}>
        <HomeBase token={token} />
      </Section>
      <Section title={t('You, the first manager')}>
        <TextField name="personName" label={t('Your name')} maxLength={120} autoComplete="name" />
        <TextField
          name="email"
          label={t('E-mail address')}
          hint={t('You sign in with it.')}
          type="email"
          autoComplete="username"
          autoCapitalize="none"
          spellCheck={false}
        />
        <TextField
          name="password"
          label={t('Password')}
          hint={t('At least 12 characters. Several words with spaces between are good.')}
          type="password"
          autoComplete="new-password"
        />
      </Section>
    </CommandForm>
  );
}

function HomeBase({ token }: { token: string }) {
  const t = useWords();
  const { formState } = useFormContext<Typed>();
  const find = useCallback((text: string) => findAirportsHere(token, text), [token]);
  return (
    <>
      <AirportSearch find={find} />
      <TextField
        name="ident"
        label={t('Identifier')}
        hint={t('2 to 7 letters and digits. It never changes once the base is added.')}
        maxLength={7}
        autoCapitalize="characters"
        spellCheck={false}
      />
      <TextField name="name" label={t('Name')} maxLength={120} />
      <div className={styles.pair}>
        <TextField
          name="latitudeDeg"
          label={t('Latitude')}
          hint={t('Decimal degrees; south is minus.')}
          spellCheck={false}
        />
        <TextField
          name="longitudeDeg"
          label={t('Longitude')}
          hint={t('Decimal degrees; west is minus.')}
          spellCheck={false}
        />
      </div>
      <ZoneFields
        wrong={Boolean(formState.errors.zoneConfirmed)}
        ask={(point) => proposeZoneHere(token, point)}
      />
    </>
  );
}

/** The token is spent, so its address is left behind for good. Where signing in does not work at once, one signs in by hand. */
async function goOn(email: string, password: string): Promise<void> {
  const answer = await knock(email, password);
  if (answer === 'in') tellSessionChanged();
  window.location.replace(answer === 'in' ? '/office' : '/sign-in?next=%2Foffice');
}
