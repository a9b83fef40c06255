'use client';

import { useWords } from '#words';
import { type VisitChoices } from '@/lib/visits/read-choices';
import { type VisitView } from '@/lib/visits/read-visit';
import { changeVisitInput, closeVisitInput } from '@/lib/visits/schema';
import { CommandForm } from '../../../_ui/command-form';
import { Checkbox } from '../../../_ui/fields';
import { endVisit, saveVisit } from '../../actions';
import { Act } from '../../acts';
import { useAct } from '../../forms/use-act';
import { AboutVisit, tickedIn, WhatToDo, type Ticks } from '../visit-fields';
import styles from '../visit.module.css';

interface Props {
  readonly visit: VisitView;
  readonly choices: VisitChoices;
}

/** Changing and closing an open visit. */
export function VisitActs({ visit, choices }: Props) {
  const t = useWords();
  // What is in the visit decides which boxes there are: another content is another form.
  const content = JSON.stringify([visit.writeUps, visit.requirements].flat().map(({ itemId }) => itemId));
  return (
    <>
      <Act title={t('Change the visit')} hint={t('Its name and day, and what is in it')}>
        <ChangeForm key={content} visit={visit} choices={choices} />
      </Act>
      <Act title={t('Close the visit')} hint={t('Signs nothing; what is not done stays open')}>
        <CloseForm visit={visit} />
      </Act>
    </>
  );
}

interface Typed {
  title: string;
  plannedOn: string;
  words: string;
  out: Ticks;
  writeUps: Ticks;
  requirements: Ticks;
}

function ChangeForm({ visit, choices }: Props) {
  const t = useWords();
  const items = [
    ...visit.writeUps.map(({ itemId, number, title }) => ({ itemId, label: `${number} ${title}` })),
    ...visit.requirements.map(({ itemId, name }) => ({ itemId, label: name })),
  ];
  const command = useAct<Typed>({
    action: saveVisit,
    schema: changeVisitInput,
    start: {
      title: visit.title,
      plannedOn: visit.plannedOn ?? '',
      words: visit.words,
      out: unticked(items.map(({ itemId }) => itemId)),
      writeUps: unticked(choices.writeUps.map(({ id }) => id)),
      requirements: unticked(choices.due.map(({ requirementId }) => requirementId)),
    },
    input: ({ title, plannedOn, words, out, writeUps, requirements }) => ({
      visitId: visit.id,
      title,
      words,
      plannedOn: plannedOn || null,
      addDiscrepancyIds: tickedIn(writeUps),
      addRequirementIds: tickedIn(requirements),
      removeItemIds: tickedIn(out),
    }),
    done: t('The visit is changed.'),
    afterDone: 'keep',
  });
  return (
    <CommandForm command={command} submit={t('Save the visit')} label={t('Change the visit')}>
      <AboutVisit />
      <WhatToDo choices={choices} legend={t('Put in more write-ups')} />
      <fieldset className={styles.choices}>
        <legend>{t('Take out of the visit')}</legend>
        {items.map(({ itemId, label }) => (
          <Checkbox key={itemId} name={`out.${itemId}`} label={label} />
        ))}
      </fieldset>
    </CommandForm>
  );
}

const unticked = (ids: readonly string[]): Ticks => Object.fromEntries(ids.map((id) => [id, false]));

function CloseForm({ visit }: { visit: VisitView }) {
  const t = useWords();
  const open = [
    ...visit.writeUps.filter(({ done }) => !done).map(({ number, title }) => `${number} ${title}`),
    ...visit.requirements.filter(({ done }) => !done).map(({ name }) => name),
  ];
  const command = useAct<Record<string, never>>({
    action: endVisit,
    schema: closeVisitInput,
    start: {},
    input: () => ({ visitId: visit.id }),
    done: t('The visit is closed.'),
  });
  return (
    <CommandForm command={command} submit={t('Close the visit')} label={t('Close the visit')}>
      {open.length === 0 ? (
        <p>{t('Everything in it is done.')}</p>
      ) : (
        <div>
          <p>{t('Not done, and open as before once the visit is closed:')}</p>
          <ul>
            {open.map((name) => (
              <li key={name}>{name}</li>
            ))}
          </ul>
        </div>
      )}
    </CommandForm>
  );
}
