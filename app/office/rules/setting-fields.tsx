'use client';

import { useWords } from '#words';
import { CheckList } from '@/app/_ui/check-list';
import { ChoiceGroup, NumberField, TextArea } from '@/app/_ui/fields';
import { type HouseKind } from '@/lib/rules/house/house-rule';
import { type Named } from './choices';

export interface SettingChoices {
  readonly chapters: readonly Named[];
  readonly areas: readonly Named[];
  readonly purposes: readonly Named[];
  readonly aircraft: readonly Named[];
  readonly types: readonly Named[];
}

/** What the chosen kind has to be told. Kinds without a setting ask nothing. */
export function SettingFields({ kind, choices }: { kind: HouseKind; choices: SettingChoices }) {
  const t = useWords();
  switch (kind) {
    case 'oil-minimum':
      return (
        <>
          <NumberField
            name="leastOil"
            label={t('Least oil')}
            unit="qt"
            hint={t('In quarts as on the dipstick, for example 6.0. Exactly this much is enough.')}
          />
          <OldestHours what={t('The reading is at most this old at departure')} />
        </>
      );
    case 'walkaround-before-flight':
      return <OldestHours what={t('The walkaround was finished at most this long before departure')} />;
    case 'no-students-at-night':
      return (
        <ChoiceGroup
          name="flights"
          label={t('Which flights')}
          choices={[
            { value: 'solo', label: t('Student solo only') },
            { value: 'solo-and-dual', label: t('Student solo and all instruction for hire') },
          ]}
        />
      );
    case 'mechanic-looks-at':
      return (
        <>
          <CheckList
            name="chapters"
            label={t('Systems (JASC chapters)')}
            hint={t('By the code of the write-up. One that has no code yet counts as in every chapter.')}
            choices={choices.chapters}
          />
          <CheckList
            name="areas"
            label={t('Places on the aircraft')}
            hint={t('By the place where it was found.')}
            choices={choices.areas}
          />
        </>
      );
    case 'reserve-before-inspection':
      return (
        <>
          <NumberField
            name="reserveHours"
            label={t('Hours kept in reserve')}
            unit="h"
            hint={t('Hours and tenths, for example 5.0. A flight may end with exactly this much left.')}
          />
          <ChoiceGroup
            name="counts"
            label={t('Before what')}
            choices={[
              { value: 'hundred-hour', label: t('The 100-hour inspection') },
              { value: 'all-by-hours', label: t('Everything that binds and is due by hours') },
            ]}
          />
        </>
      );
    case 'most-deferrals':
      return (
        <NumberField
          name="most"
          label={t('Most open deferrals')}
          whole
          hint={t('This many may be open; one more is no go.')}
        />
      );
    case 'deferral-no-older':
      return (
        <NumberField
          name="days"
          label={t('Days a deferral may last')}
          whole
          hint={t('Counted from the day it was recorded; the last day is included.')}
        />
      );
    case 'limit-in-own-words':
      return (
        <>
          <TextArea
            name="words"
            label={t('The limit')}
            rows={2}
            maxLength={300}
            hint={t('As the pilot in command shall read it, for example: Crosswind at most 8 knots.')}
          />
          <CheckList name="purposes" label={t('On flights for')} choices={choices.purposes} />
        </>
      );
    case 'no-night-with-deferral':
    case 'no-ifr-with-deferral':
    case 'solo-never-with-limits':
      return null;
  }
}

function OldestHours({ what }: { what: string }) {
  const t = useWords();
  return (
    <NumberField
      name="oldestHours"
      label={what}
      unit="h"
      whole
      hint={t('Whole hours, for example 12. Exactly this long is allowed.')}
    />
  );
}
