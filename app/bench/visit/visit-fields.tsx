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
  return (
    <>
      <TextField
        name="title"
        label="What shall it be called?"
        hint="For example: landing light and 100-hour"
        maxLength={120}
      />
      <TextField name="plannedOn" label="Planned for" type="date" optional hint="A day at the base." />
      <TextArea name="words" label="Words for whoever does it" optional rows={2} maxLength={2000} />
    </>
  );
}

/** What the aircraft offers for a visit. Nothing is ticked but what the person ticked in the queue. */
export function WhatToDo({ choices, legend }: { choices: VisitChoices; legend: string }) {
  return (
    <>
      <fieldset className={styles.choices}>
        <legend>{legend}</legend>
        {choices.writeUps.length === 0 && <p className={styles.soft}>No write-up is free to be put in.</p>}
        {choices.writeUps.map(({ id, number, title, place }) => (
          <Checkbox key={id} name={`writeUps.${id}`} label={`${number} ${title}`} hint={place} />
        ))}
      </fieldset>
      <fieldset className={styles.choices}>
        <legend>Due within 30 days or 25 hours, not known, or over</legend>
        {choices.due.length === 0 && <p className={styles.soft}>Nothing more falls due so soon.</p>}
        {choices.due.map((due) => (
          <Checkbox
            key={due.requirementId}
            name={`requirements.${due.requirementId}`}
            label={due.name}
            hint={whenDue(due)}
          />
        ))}
      </fieldset>
    </>
  );
}

/** "Due in 9.8 h, in 67 days", "Not known: when it was last done". */
const whenDue = (due: DueSoon): string =>
  [
    due.missing === null ? `Due: ${dueInWords(due)}` : `Not known: ${due.missing}`,
    due.binding ? null : 'a maker’s recommendation',
  ]
    .filter((part) => part !== null)
    .join('; ');
