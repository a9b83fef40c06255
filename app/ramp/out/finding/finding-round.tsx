'use client';

import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { useDeferredValue, useEffect, useMemo, useRef, useState, type FormEvent } from 'react';
import { FormProvider, useForm, useWatch, type Path, type UseFormReturn } from 'react-hook-form';
import {
  composeFinding,
  composeObservation,
  countsUpTo,
  EMPTY_DRAFT,
  NOT_SURE,
  questionsFor,
  readSame,
  sameAnswer,
  SOMETHING_ELSE,
  type FindingDraft,
  type FindingSetting,
  type QuestionsAsked,
} from '@/lib/findings/compose-finding';
import { KIND_TITLES } from '@/lib/rules/findings/kinds';
import { type PackWriteUp } from '@/lib/walkarounds/pack';
import { Button, SubmitButton } from '../../../_ui/button';
import { ChoiceGroup, SelectField, TextArea, TextField } from '../../../_ui/fields';
import { momentInWords } from '../../../_ui/moment';
import { Notice } from '../../../_ui/notice';
import { newRequestId } from '../../../_ui/request-id';
import { TakePhotos } from '../../_parts/take-photos';
import { afterPaint } from '../../_phone/after-paint';
import { dropDraft, keepDraft } from '../../_phone/drafts';
import { putRight, queue, useOutbox, useSync, withdraw } from '../../_phone/outbox';
import { photoMessages, usePhotos } from '../../_phone/photos';
import { type KeptDraft, type NewOutgoing, type Outgoing } from '../../_phone/shapes';
import { noteFinding } from '../../_phone/walks';
import { knownAt, knownOf } from './asked';
import { Chips } from './chips';
import { Choose } from './choose';
import { type FindingFormProps } from './finding-form';
import styles from './finding.module.css';
import { Measured } from './measured';
import { findingMessage, isTyped, observationMessage } from './messages';
import { candidatesFor } from './same-candidates';
import { SameOne } from './same-one';

interface RoundProps extends FindingFormProps {
  readonly kept: KeptDraft;
  /** The message it was sent as, when the server refused it. */
  readonly refused: Outgoing | null;
  /** It is queued, under this number. */
  readonly onGone: (id: string) => void;
  /** Throws away what was typed and begins anew; null where that is not offered. */
  readonly onAfresh: (() => void) | null;
}

/** One finding from choosing to queued. Whatever is typed is kept on the phone at once. */
export function FindingRound(props: RoundProps) {
  const t = useWords();
  const { pack, aircraft, station, itemKey, walkId, offers, start, kept, refused, onGone, onAfresh } = props;
  const { equipment } = aircraft;
  const form = useForm<FindingDraft>({ defaultValues: { ...EMPTY_DRAFT, ...kept.values } });
  const values = useWatch({ control: form.control }) as FindingDraft;
  const outbox = useOutbox();
  const { isNotKept } = useSync();
  const taken = usePhotos(kept.bundle);
  const photos = taken?.length ?? 0;
  const arePhotosRead = taken !== undefined;
  const [isPending, setPending] = useState(false);
  const [isAsked, setAsked] = useState(false);
  const [isNotQueued, setNotQueued] = useState(false);
  const [begunAt] = useState(() => (isOld(kept) && isTyped(kept.values, start) ? kept.foundAt : null));
  const isGone = useRef(false);
  const focus = useFocusOnField(form);

  const asked = questionsFor(values, offers, equipment);
  const settled = useDeferredValue(values);
  const candidates = useMemo(
    () => candidatesFor(settled, station, pack.findings, aircraft),
    [settled, station, pack.findings, aircraft],
  );
  const same = readSame(values.same);
  const seenAgain =
    same?.how === 'same' ? (knownOf(aircraft).find(({ id }) => id === same.writeUpId) ?? null) : null;

  // Kept with every keystroke, before the screen is drawn anew. A draft nobody has put anything into would only come back
  // as a riddle.
  useEffect(() => {
    function keep(typed: FindingDraft): void {
      if (isGone.current) return;
      if (photos > 0 || isTyped(typed, start)) void keepDraft({ ...kept, values: typed });
      // Not before it is known that it has no photos: they would stay behind without it.
      else if (arePhotosRead) void dropDraft(kept.key);
    }
    keep(form.getValues());
    return form.subscribe({
      formState: { values: true },
      callback: ({ name, values: typed }) => {
        keep(typed);
        // What was wrong with a field is over when it is answered.
        if (name) form.clearErrors(name as Path<FindingDraft>);
      },
    });
  }, [form, photos, arePhotosRead, kept, start]);

  useEffect(() => {
    const fields = Object.entries(refused?.problem?.fields ?? {});
    for (const [path, messages] of fields) {
      form.setError((FIELDS[path] ?? path) as Path<FindingDraft>, { message: messages.join(' ') });
    }
  }, [form, refused]);

  async function submit(event: FormEvent): Promise<void> {
    event.preventDefault();
    if (isGone.current) return;
    form.clearErrors();
    setNotQueued(false);
    const draft = form.getValues();
    // Against what is in the form now: what is shown may be a moment behind.
    const isToAsk =
      draft.same === '' && !isAsked && candidatesFor(draft, station, pack.findings, aircraft).isStrong;
    if (isToAsk) {
      form.setError('same', {
        message: t('Say whether it is one of these, or press Send again for a new one.'),
      });
      setAsked(true);
    }
    const made = compose(draft);
    if (!made.ok) {
      const wrong = Object.entries(made.fields);
      wrong.forEach(([path, message]) => form.setError(path as Path<FindingDraft>, { message }));
      if (wrong[0]) focus(wrong[0][0]);
      return;
    }
    if (isToAsk) return focus('same');
    isGone.current = true;
    setPending(true);
    try {
      await send(made.message);
      onGone(made.message.id);
    } catch (error) {
      console.error(error);
      isGone.current = false;
      setNotQueued(true);
    } finally {
      setPending(false);
    }
  }

  function compose(draft: FindingDraft) {
    // A walkaround the server did not take would hold this up for ever.
    const isWalkRefused = outbox.some(({ id, state }) => id === walkId && state === 'refused');
    // Sent from another tab meanwhile with other words: what is typed here is then a message of its own.
    const isTaken = outbox.some(
      ({ id, state, message }) =>
        id === kept.requestId && state !== 'refused' && message.words !== draft.words.trim(),
    );
    const isOther = isTaken || isOtherMessage(seenAgain !== null, refused);
    const setting: FindingSetting = {
      requestId: isOther ? newRequestId() : kept.requestId,
      aircraftId: aircraft.id,
      walkaroundId: isWalkRefused ? null : walkId,
      station,
      itemKey,
      foundAt: kept.foundAt,
      offers,
      equipment,
    };
    if (seenAgain) {
      const made = composeObservation(draft, seenAgain.id, setting);
      const label = t('{registration}: {number} seen again', {
        registration: aircraft.registration,
        number: seenAgain.number,
      });
      return made.ok
        ? { ok: true as const, message: observationMessage(made.input, aircraft.id, label) }
        : made;
    }
    const made = composeFinding(draft, setting);
    const label = `${aircraft.registration}: ${t(asked.offered?.title ?? said('Something else'))}`;
    return made.ok ? { ok: true as const, message: findingMessage(made.input, label) } : made;
  }

  async function send(message: NewOutgoing): Promise<void> {
    const pictures = await photoMessages(kept.bundle, message.id, aircraft.id, message.label);
    if (refused?.id === message.id) {
      await putRight(message.id, message.message);
      await queue(pictures, { dropDraft: kept.key });
    } else {
      await queue([message, ...pictures], { dropDraft: kept.key });
      // Its photos hang on the new message now.
      if (refused) await withdraw(refused.id);
    }
    if (props.isOnKeptWalk) await noteFinding(aircraft.id, { station, itemKey, id: message.id });
  }

  function choose(finding: string) {
    void afterPaint().then(() => form.reset({ ...form.getValues(), finding }));
  }

  function chooseSame(writeUp: PackWriteUp) {
    const offered = offers.find(({ key }) => key === writeUp.findingKey);
    form.reset({
      ...form.getValues(),
      finding: offered?.key ?? SOMETHING_ELSE,
      kind: offered ? '' : writeUp.kind,
      same: sameAnswer('same', writeUp.id),
    });
  }

  function unchoose() {
    setAsked(false);
    form.reset({ ...form.getValues(), ...UNCHOSEN });
  }

  if (!asked.offered && !asked.kind) {
    return (
      <Choose offers={offers} known={knownAt(aircraft, station)} onChoose={choose} onSame={chooseSame} />
    );
  }
  const title = seenAgain
    ? `${seenAgain.number} ${seenAgain.title}`
    : t(asked.offered?.title ?? said('Something else'));
  const sameOne = <SameOne candidates={candidates.shown} zone={aircraft.zone} />;
  return (
    <FormProvider {...form}>
      <form noValidate onSubmit={submit} aria-label={t('Finding')} className={styles.form}>
        {refused?.problem && (
          <Notice tone="red" title={refused.problem.say}>
            <p>
              {t(
                'The server did not take it. Your words and photos are here; change what is wrong and send again.',
              )}
            </p>
          </Notice>
        )}
        {isNotKept && (
          <Notice
            tone="amber"
            title={t('This phone does not keep what you type. Send before you leave this page.')}
          />
        )}
        {begunAt !== null && onAfresh && (
          <Notice
            tone="blue"
            title={t('You began this {moment}.', { moment: momentInWords(begunAt, aircraft.zone) })}
          >
            <p>{t('That is the time it will say it was found.')}</p>
            <div>
              <Button onClick={onAfresh}>{t('Throw it away and begin anew')}</Button>
            </div>
          </Notice>
        )}
        <Chosen title={title} onChange={unchoose} />
        {candidates.isByChoice && sameOne}
        {!seenAgain && <Questions asked={asked} />}
        <div className={styles.withChips}>
          <TextArea
            name="words"
            label={seenAgain ? t('What you saw this time') : t('What you saw')}
            rows={3}
            maxLength={2000}
            optional={seenAgain !== null}
          />
          <Chips
            label={t('Put in')}
            words={asked.offered && !seenAgain ? [asked.offered.title, ...SAYINGS] : SAYINGS}
            onPut={(words) => putIn(form, 'words', words, '. ')}
          />
        </div>
        <div className={styles.withChips}>
          <TextField name="place" label={t('Where exactly')} maxLength={200} optional />
          <Chips label={t('Put in')} words={PLACES} onPut={(words) => putIn(form, 'place', words, ', ')} />
        </div>
        {!candidates.isByChoice && sameOne}
        <fieldset className={styles.withChips}>
          <legend className={styles.legend}>
            <Say text="Photos <span>(optional)</span>" parts={{ span: <span className={styles.soft} /> }} />
          </legend>
          <TakePhotos bundle={kept.bundle} />
        </fieldset>
        {asked.offered && (
          <Measured
            key={asked.offered.key}
            offered={asked.offered}
            values={values}
            isWrong={form.formState.errors.measurements !== undefined}
          />
        )}
        {walkId === null && (
          <ChoiceGroup
            name="phase"
            label={t('When did you notice it?')}
            optional
            sideBySide
            choices={[
              { value: 'before-flight', label: t('Before flight') },
              { value: 'in-flight', label: t('In flight') },
              { value: 'after-flight', label: t('After flight') },
            ]}
          />
        )}
        {isNotQueued && (
          <Notice tone="red" title={t('This phone could not keep it for sending.')}>
            <p>
              {t(
                'What you typed is still here. Press again; if that does not help, tell the dispatcher yourself.',
              )}
            </p>
          </Notice>
        )}
        <SubmitButton pending={isPending} wide>
          {isAsked && values.same === ''
            ? t('Send as a new one')
            : seenAgain
              ? t('Add to {number}', { number: seenAgain.number })
              : t('Send')}
        </SubmitButton>
      </form>
    </FormProvider>
  );
}

/** What has to be known about the finding chosen: its kind, which one it is, how many. */
function Questions({ asked }: { asked: QuestionsAsked }) {
  const t = useWords();
  return (
    <>
      {asked.kind && (
        <ChoiceGroup
          name="kind"
          label={t('What kind of trouble?')}
          sideBySide
          choices={[
            ...Object.entries(KIND_TITLES).map(([value, label]) => ({ value, label: t(label) })),
            { value: NOT_SURE, label: t('Not sure') },
          ]}
        />
      )}
      {asked.offered && asked.choice && (
        <ChoiceGroup
          name="choice"
          label={t('Which is it?')}
          sideBySide
          choices={[
            ...asked.offered.choices.map(({ jasc, label }) => ({ value: jasc, label })),
            { value: NOT_SURE, label: t('Not sure') },
          ]}
        />
      )}
      {asked.items.length > 0 && (
        <SelectField
          name="item"
          label={t('Which one on the equipment list?')}
          choices={[
            ...asked.items.map(({ id, name }) => ({ value: id, label: name })),
            { value: NOT_SURE, label: t('Not sure, or not on the list') },
          ]}
        />
      )}
      {asked.countUpTo > 0 && (
        <ChoiceGroup
          name="count"
          label={t('How many do not work?')}
          sideBySide
          choices={[
            ...countsUpTo(asked.countUpTo).map((count) => ({ value: count, label: count })),
            { value: NOT_SURE, label: t('Not sure') },
          ]}
        />
      )}
    </>
  );
}

/** What was chosen, with the way back. Takes the focus, since the button that was pressed is gone. */
function Chosen({ title, onChange }: { title: string; onChange: () => void }) {
  const t = useWords();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <div className={styles.chosen}>
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      <Button weight="quiet" onClick={onChange}>
        {t('Change')}
      </Button>
    </div>
  );
}

/** Puts the cursor into a field after the screen has changed: it may only just have been unfolded. */
function useFocusOnField(form: UseFormReturn<FindingDraft>): (path: string) => void {
  const [wanted, setWanted] = useState<{ readonly path: string } | null>(null);
  useEffect(() => {
    if (wanted) form.setFocus(wanted.path as Path<FindingDraft>);
  }, [form, wanted]);
  return (path) => setWanted({ path });
}

/** Behind what is there already, once. */
function putIn(
  form: UseFormReturn<FindingDraft>,
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

/**
 * Whether what goes out now is another message than the refused one: another kind, or one whose number the server has
 * seen with other content.
 */
const isOtherMessage = (isObservation: boolean, refused: Outgoing | null): boolean =>
  refused !== null &&
  (refused.problem?.code === 'conflict' || (refused.kind === 'observation') !== isObservation);

/** A draft that old was not begun on this visit. */
const OLD_MS = 2 * 60 * 60 * 1000;
const isOld = (kept: KeptDraft): boolean => Date.now() - Date.parse(kept.foundAt) > OLD_MS;

/** Another finding has other questions; place and words stay. */
const UNCHOSEN = {
  finding: '',
  kind: '',
  choice: '',
  item: '',
  count: '',
  measurements: {},
  same: '',
} as const;

const SAYINGS = ['Not there on the last flight', 'Was there before', 'Not touched'];
const PLACES = ['left', 'right', 'upper side', 'lower side', 'near the tip', 'near the root'];

/** The service's names for the fields of this form. */
const FIELDS: Readonly<Record<string, string>> = {
  findingKey: 'finding',
  jasc: 'choice',
  equipmentId: 'item',
  inoperativeCount: 'count',
  relatedId: 'same',
  discrepancyId: 'same',
};
