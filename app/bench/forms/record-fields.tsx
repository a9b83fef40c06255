'use client';

import { useWords } from '#words';
import { type RequirementKind } from '@/lib/rules/aircraft';
import { NumberField, TextArea, TextField } from '../../_ui/fields';
import { FormGroup } from './form-group';

/** What the record of some kinds says beyond date and hours; nothing for the others. `at`: the name the fields stand under. */
export function RecordFields({ kind, at = 'details.' }: { kind: RequirementKind; at?: string }) {
  const t = useWords();
  switch (kind) {
    case 'static-and-altimeter':
      return (
        <FormGroup title={t('The record')}>
          <NumberField
            name={`${at}testedToFt`}
            label={t('Tested to')}
            unit="ft"
            whole
            hint={t(
              'The highest altitude of the test: no IFR in controlled airspace above it (14 CFR 91.411(d)).',
            )}
          />
        </FormGroup>
      );
    case 'elt-battery':
      return (
        <FormGroup title={t('The record')}>
          <TextField
            name={`${at}newExpiry`}
            label={t('New date on the battery')}
            type="date"
            hint={t('As marked on the outside of the transmitter (14 CFR 91.207(c)).')}
          />
        </FormGroup>
      );
    case 'directive':
      return (
        <FormGroup title={t('The record')} hint={t('14 CFR 91.417(a)(2)(v).')}>
          <TextArea name={`${at}method`} label={t('How the directive was met')} rows={2} />
          <TextField name={`${at}revision`} label={t('Revision date of the directive')} />
        </FormGroup>
      );
    default:
      return null;
  }
}
