import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { Checkbox, TextArea, TextField } from '../../_ui/fields';
import { dueInWords } from '@/lib/fleet/board-columns';
import { type DueSoon } from '@/lib/rules/due-soon';
import { type VisitChoices } from '@/lib/visits/read-choices';
import styles from './visit.module.css';

/** Ticks by id. */
export type Ticks = Readonly<Record<string, boolean>>;

/** The ids that are ticked. */
export const tickedIn = (ticks: Ticks): string[] =>
  Object.entries(ticks)
    .filter(([, isTicked]) => isTicked)
    .map(([id]) => id);

/** What a visit is called, when it is planned for, and what is said about it. */
export function AboutVisit() {
  const t = useWords();
  return (
    <>
      <TextField
        name="title"
        label={t('What shall it be called?')}
        hint={t('For example: landing light and 100-hour')}
        maxLength={120}
      />
      <TextField
        name="plannedOn"
        label={t('Planned for')}
        type="date"
        optional
        hint={t('A day at the base.')}
      />
      <TextArea name="words" label={t('Words for whoever does it')} optional rows={2} maxLength={2000} />
    </>
  );
}

/** What the aircraft offers for a visit. Nothing is ticked but what the person ticked in the queue. */
export function WhatToDo({ choices, legend }: { choices: VisitChoices; legend: string }) {
  const t = useWords();
  return (
    <>
      <fieldset className={styles.choices}>
        <legend>{legend}</legend>
        {choices.writeUps.length === 0 && (
          <p className={styles.soft}>{t('No write-up is free to be put in.')}</p>
        )}
        {choices.writeUps.map(({ id, number, title, place }) => (
          <Checkbox key={id} name={`writeUps.${id}`} label={`${number} ${title}`} hint={place} />
        ))}
      </fieldset>
      <fieldset className={styles.choices}>
        <legend>{t('Due within 30 days or 25 hours, not known, or over')}</legend>
        {choices.due.length === 0 && <p className={styles.soft}>{t('Nothing more falls due so soon.')}</p>}
        {choices.due.map((due) => (
          <Checkbox
            key={due.requirementId}
            name={`requirements.${due.requirementId}`}
            label={due.name}
            hint={whenDue(t, due)}
          />
        ))}
      </fieldset>
    </>
  );
}

/** "Due in 9.8 h, in 67 days", "Not known: when it was last done". */
const whenDue = (t: Translate, due: DueSoon): string =>
  [
    due.missing === null
      ? t('Due: {due}', { due: dueInWords(t, due) })
      : t('Not known: {missing}', { missing: due.missing }),
    due.binding ? null : t('a maker’s recommendation'),
  ]
    .filter((part) => part !== null)
    .join('; ');
