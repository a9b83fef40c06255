import { Say, useWords } from '#words';
import { mayUse, type Role } from '@/lib/access/policy';
import { type RequirementView } from '@/lib/inspections/read-requirement';
import { RECORD_STATEMENT } from '@/lib/inspections/record-requirement';
import { asksBothRatings, BOTH_RATINGS_WHY, mayBePreventive } from '@/lib/inspections/work-of-requirement';
import { dayInWords } from '@/lib/rules/in-words';
import { VOR_LIMITS, VOR_METHODS } from '@/lib/rules/part-91/91-171-bearing-errors';
import { Cite } from '../../../_ui/cite';
import Link from '../../../_ui/link';
import { Section } from '../../../_ui/page';
import { Act, ActList } from '../../acts';
import { BeginInspection } from '../../inspection/begin-form';
import styles from '../../inspection/inspection.module.css';
import { PREVENTIVE_CHOICES } from '../../preventive-choices';
import { RecordForm } from '../record-form';
import { StartOnDueForm } from '../start-form';
import { VorForm } from '../vor-form';

interface AnswersProps {
  readonly view: RequirementView;
  readonly roles: readonly Role[];
  readonly underWay: boolean;
}

/** The ways to answer it: an inspection, work, a check, or papers of another shop. */
export function Answers({ view, roles, underWay }: AnswersProps) {
  const t = useWords();
  const { way } = view;
  const acts = [
    way.by === 'inspection' && mayUse(roles, 'inspection.begin') && !view.openInspectionId && (
      <Act
        key="inspect"
        title={t('Begin the inspection')}
        hint={t('One entry for each logbook, signed part by part.')}
      >
        <BeginInspection aircraftId={view.aircraftId} requirements={view.beside} />
      </Act>
    ),
    (way.by === 'fixed' || way.by === 'chosen') && !underWay && mayUse(roles, 'requirement.start-work') && (
      <Act key="work" title={t('Do it as work')} hint={t('Its entry and signature are the record.')}>
        <StartOnDueForm
          requirementId={view.id}
          fixed={way.by === 'fixed'}
          mayBePreventive={mayBePreventive(way, view.binding)}
          whoSigns={asksBothRatings(view.kind) ? BOTH_RATINGS_WHY : null}
          items={PREVENTIVE_CHOICES}
        />
      </Act>
    ),
    way.by === 'check' && mayUse(roles, 'vor-check.record') && (
      <Act
        key="vor"
        title={t('Record a VOR check')}
        hint={t('By whoever made it; no certificate number is asked.')}
      >
        <p>{t('An error over the limit is no check: report it as a finding.')}</p>
        <Cite cite="14cfr91.171(d)" />
        <VorForm
          requirementId={view.id}
          signer={view.me.name}
          methods={VOR_METHODS.map((method) => ({
            value: method,
            label: VOR_LIMITS[method].name,
            hint: t('Not more than {tenths} degrees.', { tenths: VOR_LIMITS[method].tenths / 10 }),
          }))}
        />
      </Act>
    ),
    way.by !== 'check' && mayUse(roles, 'requirement.record') && (
      <Act
        key="papers"
        title={t('Record it from papers')}
        hint={t('Done by another shop; or a record here is wrong.')}
      >
        {way.by === 'inspection' && (
          <>
            <p>
              {t(
                'What became of each deferred item at that inspection stays owed, and is asked here afterwards.',
              )}
            </p>
            <Cite cite="14cfr91.405(c)" />
          </>
        )}
        <RecordForm
          requirementId={view.id}
          kind={view.kind}
          signer={view.me.name}
          statement={RECORD_STATEMENT}
          standing={view.history
            .filter(({ superseded }) => !superseded)
            .map(({ id, doneOn, approvedBy }) => ({
              value: id,
              label: `${dayInWords(doneOn)}, ${approvedBy}`,
            }))}
        />
      </Act>
    ),
  ].filter(Boolean);
  if (acts.length === 0 && !view.openInspectionId) return null;
  return (
    <Section title={t('How it is answered')} id="acts">
      {view.openInspectionId && way.by === 'inspection' && (
        <p className={styles.row}>
          <Say
            text="An inspection is under way: <link>go to it</link>"
            parts={{ link: <Link href={`/bench/inspection/${view.openInspectionId}`} /> }}
          />
        </p>
      )}
      <ActList>{acts}</ActList>
    </Section>
  );
}
