'use client';

import { useEffect, useRef, useState, useSyncExternalStore, type FormEvent } from 'react';
import { useWatch, type Path } from 'react-hook-form';
import { type Problem } from '@/lib/problems';
import {
  composeFinding,
  countsUpTo,
  NOT_SURE,
  questionsFor,
  SOMETHING_ELSE,
  type FindingDraft,
  type FindingOffered,
  type ItemOnList,
} from '@/lib/findings/compose-finding';
import { type ReportedFinding } from '@/lib/findings/report-finding';
import { type ReportFindingInput } from '@/lib/findings/schema';
import { MEASURE_UNITS } from '@/lib/rules/findings/measurements';
import { Button } from '../../../_ui/button';
import { CommandForm } from '../../../_ui/command-form';
import { ChoiceGroup, NumberField, SelectField, TextArea, TextField } from '../../../_ui/fields';
import { Notice } from '../../../_ui/notice';
import { newRequestId } from '../../../_ui/request-id';
import { type Unsent } from '../../../_ui/use-command';
import { TakePhotos } from '../../_parts/take-photos';
import { counted } from '../../_parts/words';
import { draftKey, readKept, walkKey } from '../../_phone/kept';
import { releasePhotos } from '../../_phone/photo-outbox';
import { sendOnce } from '../../_phone/send';
import { answerStation, sendStart, type Walk } from '../../_phone/walk';
import { Chips } from './chips';
import styles from './finding.module.css';
import { Written } from './written';
import { useDraft } from './use-draft';

interface FindingFormProps {
  readonly personId: string;
  readonly aircraftId: string;
  readonly registration: string;
  readonly station: string;
  readonly walkId: string | null;
  readonly offers: readonly FindingOffered[];
  readonly kinds: readonly { readonly value: string; readonly label: string }[];
  readonly equipment: readonly ItemOnList[];
}

/** The form lives on what the phone keeps, so it is drawn in the browser only. */
export function FindingForm(props: FindingFormProps) {
  const isBrowser = useSyncExternalStore(
    nothingChanges,
    () => true,
    () => false,
  );
  const [round, setRound] = useState(0);
  if (!isBrowser) return <p className={styles.loading}>One moment…</p>;
  return <FindingRound key={round} {...props} onAnother={() => setRound(round + 1)} />;
}

const nothingChanges = () => () => undefined;

/** One finding from choosing to sent. */
function FindingRound(props: FindingFormProps & { readonly onAnother: () => void }) {
  const { personId, aircraftId, registration, station, walkId, offers, kinds, equipment, onAnother } = props;
  const draft = useDraft(draftKey(personId, aircraftId, station));
  const { form, kept } = draft;
  const values = useWatch({ control: form.control }) as FindingDraft;
  const asked = questionsFor(values, offers, equipment);
  const [outcome, setOutcome] = useState<{ problem: Problem | null; unsent: Unsent | null }>(NOTHING_WRONG);
  const [isPending, setPending] = useState(false);
  const busy = useRef(false);
  const [written, setWritten] = useState<{ finding: ReportedFinding; arrivedEarlier: boolean } | null>(null);

  // What was wrong with a field is over when it is answered.
  useEffect(
    () =>
      form.subscribe({
        formState: { values: true },
        callback: ({ name }) => {
          if (name) form.clearErrors(name as Path<FindingDraft>);
        },
      }),
    [form],
  );

  async function submit(event?: FormEvent): Promise<void> {
    event?.preventDefault();
    if (busy.current) return;
    form.clearErrors();
    setOutcome(NOTHING_WRONG);
    const setting = { requestId: kept.requestId, aircraftId, station, foundAt: kept.foundAt };
    const composed = composeFinding(form.getValues(), {
      ...setting,
      walkaroundId: walkId,
      offers,
      equipment,
    });
    if (!composed.ok) {
      Object.entries(composed.fields).forEach(([path, message], index) =>
        form.setError(path as Path<FindingDraft>, { message }, { shouldFocus: index === 0 }),
      );
      return;
    }
    busy.current = true;
    setPending(true);
    try {
      await send(composed.input);
    } finally {
      busy.current = false;
      setPending(false);
    }
  }

  async function send(input: ReportFindingInput): Promise<void> {
    const walk = walkId ? readKept<Walk>(walkKey(personId, aircraftId)) : null;
    if (walk && walk.id === walkId) {
      const started = await sendStart(personId, walk);
      if (!started.ok) return fail(started.problem, started.problem ? null : started.unsent);
    }
    draft.change({ tried: input });
    const { sent, arrivedEarlier } = await sendOnce<ReportedFinding>('/api/sync/findings', input, kept.tried);
    if (!sent.ok) {
      if (sent.problem) refused(sent.problem);
      return fail(sent.problem, sent.problem ? null : sent.unsent);
    }
    draft.forget();
    releasePhotos(kept.bundle, sent.value.findingId, sent.value.number);
    if (walk) answerStation(personId, walk, station, 'finding');
    setWritten({ finding: sent.value, arrivedEarlier });
  }

  /** A refusal by the server means that this content was not taken; what was typed stays for the next try. */
  function refused(problem: Problem): void {
    if (problem.code === 'conflict') draft.change({ requestId: newRequestId(), tried: null });
    else if (problem.code !== 'try_again' && problem.code !== 'bug') draft.change({ tried: kept.tried });
    for (const [path, messages] of Object.entries(problem.fields ?? {})) {
      const message = messages.join(' ');
      form.setError((FIELDS[path] ?? path) as Path<FindingDraft>, { message });
    }
  }

  function fail(problem: Problem | null, unsent: Unsent | null): void {
    setOutcome({ problem, unsent });
  }

  if (written) {
    return (
      <Written
        {...written}
        registration={registration}
        aircraftId={aircraftId}
        isOnWalk={walkId !== null}
        bundle={kept.bundle}
        onAnother={onAnother}
      />
    );
  }

  const chosen = asked.offered?.title ?? (asked.kind ? 'Something else' : null);
  if (chosen === null) {
    return <Choose offers={offers} onChoose={(key) => form.setValue('finding', key)} />;
  }
  return (
    <>
      {draft.isNotKept && (
        <Notice
          tone="amber"
          title="This phone does not keep what you type. Send before you leave this page."
        />
      )}
      {draft.lostPhotos > 0 && (
        <Notice
          tone="blue"
          title={`What you typed is still here. ${counted(draft.lostPhotos, 'photo')} went with the page: take them again.`}
        />
      )}
      <CommandForm
        command={{ form, submit, pending: isPending, ...outcome }}
        submit={outcome.unsent ? 'Send again' : 'Send'}
        label="Finding"
        wide
      >
        <Chosen title={chosen} onChange={() => form.reset({ ...form.getValues(), ...UNCHOSEN })} />
        {asked.kind && (
          <ChoiceGroup
            name="kind"
            label="What kind of trouble?"
            sideBySide
            choices={[...kinds, { value: NOT_SURE, label: 'Not sure' }]}
          />
        )}
        {asked.offered && asked.choice && (
          <ChoiceGroup
            name="choice"
            label="Which is it?"
            sideBySide
            choices={[
              ...asked.offered.choices.map(({ jasc, label }) => ({ value: jasc, label })),
              { value: NOT_SURE, label: 'Not sure' },
            ]}
          />
        )}
        {asked.items.length > 0 && (
          <SelectField
            name="item"
            label="Which one on the equipment list?"
            choices={[
              ...asked.items.map(({ id, name }) => ({ value: id, label: name })),
              { value: NOT_SURE, label: 'Not sure, or not on the list' },
            ]}
          />
        )}
        {asked.countUpTo > 0 && (
          <ChoiceGroup
            name="count"
            label="How many do not work?"
            sideBySide
            choices={[
              ...countsUpTo(asked.countUpTo).map((count) => ({ value: count, label: count })),
              { value: NOT_SURE, label: 'Not sure' },
            ]}
          />
        )}
        <div className={styles.withChips}>
          <TextArea name="words" label="What you saw" rows={3} maxLength={2000} />
          <Chips
            label="Put in"
            words={asked.offered ? [asked.offered.title, ...SAYINGS] : SAYINGS}
            onPut={(words) => putIn(form, 'words', words, '. ')}
          />
        </div>
        <div className={styles.withChips}>
          <TextField name="place" label="Where exactly" maxLength={200} optional />
          <Chips label="Put in" words={PLACES} onPut={(words) => putIn(form, 'place', words, ', ')} />
        </div>
        <fieldset className={styles.withChips}>
          <legend className={styles.legend}>
            Photos <span className={styles.soft}>(optional)</span>
          </legend>
          <TakePhotos bundle={kept.bundle} />
        </fieldset>
        {asked.offered && (
          <Measured
            offered={asked.offered}
            values={values}
            isWrong={form.formState.errors.measurements !== undefined}
          />
        )}
      </CommandForm>
    </>
  );
}

/** What can be measured. Folded away while nothing is, since most findings are seen and not measured. */
function Measured(props: { offered: FindingOffered; values: FindingDraft; isWrong: boolean }) {
  const { offered, values, isWrong } = props;
  const { measurements } = offered;
  const [isOpen, setOpen] = useState(() =>
    measurements.some(({ key }) => (values.measurements[key] ?? '') !== ''),
  );
  if (measurements.length === 0) return null;
  return (
    <details
      className={styles.measured}
      open={isOpen || isWrong}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        Measured it? <span className={styles.soft}>(optional)</span>
      </summary>
      <div className={styles.withChips}>
        {measurements.some(({ needed }) => needed) && (
          <p className={styles.soft}>Only what is measured can be found within limits.</p>
        )}
        {measurements.map(({ key, label, unit }) => (
          <NumberField
            key={key}
            name={`measurements.${key}`}
            label={label}
            unit={MEASURE_UNITS[unit].label}
            whole={MEASURE_UNITS[unit].decimals === 0}
          />
        ))}
      </div>
    </details>
  );
}

/** The likely findings as big buttons; a press chooses at once. */
function Choose({
  offers,
  onChoose,
}: {
  offers: readonly FindingOffered[];
  onChoose: (key: string) => void;
}) {
  return (
    <section aria-labelledby="what">
      <h2 id="what">What did you find?</h2>
      <ul className={styles.offers}>
        {[...offers, { key: SOMETHING_ELSE, title: 'Something else' }].map(({ key, title }) => (
          <li key={key}>
            <button type="button" className={styles.offer} onClick={() => onChoose(key)}>
              {title}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What was chosen, with the way back. Takes the focus, since the button that was pressed is gone. */
function Chosen({ title, onChange }: { title: string; onChange: () => void }) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), [title]);
  return (
    <div className={styles.chosen}>
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      <Button weight="quiet" onClick={onChange}>
        Change
      </Button>
    </div>
  );
}

/** Behind what is there already, once. */
function putIn(
  form: ReturnType<typeof useDraft>['form'],
  field: 'words' | 'place',
  words: string,
  between: string,
): void {
  const there = form.getValues(field).trim();
  if (there.includes(words)) return;
  const next = there === '' ? words : `${there.replace(/[.,]$/, '')}${between}${words}`;
  form.setValue(field, next, { shouldDirty: true });
  form.clearErrors(field);
}

const NOTHING_WRONG = { problem: null, unsent: null } as const;

/** Another finding has other questions; place and words stay. */
const UNCHOSEN = { finding: '', kind: '', choice: '', item: '', count: '', measurements: {} } as const;

const SAYINGS = ['Not there on the last flight', 'Was there before', 'Noticed in flight', 'Not touched'];
const PLACES = ['left', 'right', 'upper side', 'lower side', 'near the tip', 'near the root'];

/** The service's names for the fields of this form. */
const FIELDS: Readonly<Record<string, string>> = {
  findingKey: 'finding',
  jasc: 'choice',
  equipmentId: 'item',
  inoperativeCount: 'count',
};
