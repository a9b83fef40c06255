'use client';

import { useWords } from '#words';
import { CommandForm } from '@/app/_ui/command-form';
import { YesNo } from '@/app/bench/forms/yes-no';
import { SelectField, TextField } from '@/app/_ui/fields';
import { useCommand } from '@/app/_ui/use-command';
import { CheckList } from '@/app/_ui/check-list';
import {
  enterCertificateInput,
  PILOT_GRADES,
  RATINGS_OF,
  type CertificateKind,
} from '@/lib/people/certificate-schema';
import { type CertificateView } from '@/lib/people/certificate-view';
import { said } from '@/lib/words/said';
import { enter } from '../actions';
import { GRADE_WORDS, KIND_WORDS, RATING_WORDS } from '../words';

interface Typed {
  personId: string;
  kind: CertificateKind;
  renewsId: string;
  number: string;
  grade: string;
  ratings: string[];
  issuedOn: string;
  expiresOn: string;
  recentExperienceThrough: string;
  firstYearActivityMet: string;
  authorisedToSign: string;
}

const yesNo = (known: boolean | null | undefined) =>
  known === true ? 'yes' : known === false ? 'no' : 'not-said';

const startOf = (personId: string, kind: CertificateKind, renews: CertificateView | null): Typed => ({
  personId,
  kind,
  renewsId: renews?.id ?? '',
  number: renews?.number ?? '',
  grade: renews?.grade ?? '',
  ratings: [...(renews?.ratings ?? [])],
  issuedOn: renews?.issuedOn ?? '',
  expiresOn: renews?.expiresOn ?? '',
  recentExperienceThrough: renews?.recentExperienceThrough ?? '',
  firstYearActivityMet: yesNo(renews?.firstYearActivityMet),
  authorisedToSign: yesNo(renews?.authorisedToSign),
});

interface Props {
  readonly personId: string;
  readonly kind: CertificateKind;
  readonly renews: CertificateView | null;
}

/** A certificate to be entered, or renewed by a newer entry. Beside each field what the law asks, and where. */
export function CertificateForm({ personId, kind, renews }: Props) {
  const t = useWords();
  const command = useCommand<Typed, unknown>({
    action: enter,
    schema: enterCertificateInput,
    start: startOf(personId, kind, renews),
    // Renewed, the page draws the form anew for the new entry.
    afterDone: 'keep',
  });
  return (
    <CommandForm
      command={command}
      submit={renews ? t('Enter the renewal') : t('Enter the certificate')}
      pendingWords={t('Entering…')}
      label={t(KIND_WORDS[kind])}
    >
      <TextField
        name="number"
        label={t('Number')}
        hint={t('It goes into every entry that is signed under it: 14 CFR 43.9(a)(4).')}
        maxLength={40}
        autoComplete="off"
        spellCheck={false}
      />
      {kind === 'pilot' && (
        <SelectField
          name="grade"
          label={t('Grade')}
          hint={t(
            'Who may be pilot in command with an inoperative item, and who may approve preventive maintenance, hangs on it: 14 CFR 91.213(d), 43.7(f).',
          )}
          choices={PILOT_GRADES.map((value) => ({ value, label: t(GRADE_WORDS[value] ?? value) }))}
        />
      )}
      {RATINGS_OF[kind].length > 0 && (
        <CheckList
          name="ratings"
          label={t('Ratings')}
          hint={t(RATING_HINTS[kind])}
          choices={RATINGS_OF[kind].map((value) => ({
            value,
            label: t(RATING_WORDS[value] ?? value),
            says: '',
          }))}
        />
      )}
      <TextField name="issuedOn" type="date" label={t('Issued on')} optional />
      {kind === 'mechanic' && (
        <TextField
          name="recentExperienceThrough"
          type="date"
          label={t('Recent experience vouched for through')}
          optional
          hint={t(
            '14 CFR 65.83: six months of work as mechanic or supervisor within the 24 months before, or found able by the FAA. The last day you vouch for. Left empty it stays unknown, and nothing can be signed.',
          )}
        />
      )}
      {kind === 'inspection-authorization' && (
        <>
          <TextField
            name="expiresOn"
            type="date"
            label={t('Expires on')}
            hint={t('14 CFR 65.92(a): 31 March of an odd year.')}
          />
          <YesNo
            name="firstYearActivityMet"
            label={t('Was the activity of the first year met by 31 March of the even year?')}
            hint={t(
              '14 CFR 65.93(a), (c): without it the privileges stop after that day. Not said counts as unknown.',
            )}
            third={{ value: 'not-said', label: t('Not said') }}
          />
        </>
      )}
      {kind === 'repair-station' && (
        <YesNo
          name="authorisedToSign"
          label={t('May this person sign for the repair station?')}
          hint={t(
            '14 CFR 43.7(c), part 145: by the station’s own list. Not said counts as unknown, and nothing can be signed.',
          )}
          third={{ value: 'not-said', label: t('Not said') }}
        />
      )}
      {(kind === 'pilot' || kind === 'repair-station') && (
        <TextField
          name="expiresOn"
          type="date"
          label={t('Expires on')}
          optional
          hint={t('Only where the certificate names a day.')}
        />
      )}
    </CommandForm>
  );
}

const RATING_HINTS: Readonly<Record<CertificateKind, string>> = {
  pilot: said('Category and class as they stand on it. A student certificate carries none.'),
  mechanic: said('14 CFR 65.85, 65.87: each carries its own part of the aircraft.'),
  'inspection-authorization': '',
  'repair-station': said('What the station may work on: 14 CFR 43.7(c).'),
};
