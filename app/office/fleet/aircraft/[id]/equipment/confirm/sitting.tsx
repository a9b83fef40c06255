'use client';

import { useWords } from '#words';
import { useRouter } from 'next/navigation';
import { useId, useState, useSyncExternalStore } from 'react';
import { FieldError, Hint, Label } from '@/app/_ui/fields';
import fields from '@/app/_ui/fields.module.css';
import { type LineView } from '@/lib/equipment/read-equipment';
import { said } from '@/lib/words/said';
import styles from '../../../../fleet.module.css';
import { keepDraft, keptDraft, type Decided, type Draft } from './draft';
import { lineAsTyped } from '../../../../_parts/line-typed';
import { OneItem } from './one-item';
import { SignSitting } from './sign-sitting';

interface Props {
  readonly aircraftId: string;
  readonly lines: readonly LineView[];
  readonly signer: string;
  /** Where the equipment lists of the type come from; a hint, and no more: whoever signs names the document. */
  readonly document: string;
}

const NO_SOURCE = said('Name the document it is taken from, with its revision or date.');

/**
 * What a paragraph names stays on the list with none installed, or the engine would go on asking about it; anything else is
 * taken off. The page says beforehand that neither type design nor list requires it; where one does, 0 is typed instead.
 */
const notInstalled = (line: LineView): Pick<Decided, 'kind' | 'line'> =>
  line.function === 'other'
    ? { kind: 'not-installed' }
    : {
        kind: 'agrees',
        line: {
          ...lineAsTyped(line),
          installed: '0',
          requiredDayVfr: '0',
          requiredNightVfr: '0',
          requiredDayIfr: '0',
          requiredNightIfr: '0',
          vfrDayTypeDesign: 'no',
          authority: [],
        },
      };

const nothingChanges = () => () => undefined;

/** Only in the browser, which may hold a draft of it. */
export function Sitting(props: Props) {
  const t = useWords();
  const inBrowser = useSyncExternalStore(
    nothingChanges,
    () => true,
    () => false,
  );
  return inBrowser ? <Begun {...props} /> : <p>{t('Loading…')}</p>;
}

/** One item after another; what is decided is kept until it is signed. */
function Begun({ aircraftId, lines, signer, document }: Props) {
  const t = useWords();
  const router = useRouter();
  const id = useId();
  const [draft, setDraft] = useState<Draft>(
    () =>
      keptDraft(
        aircraftId,
        lines.map((line) => line.id),
      ) ?? { source: '', decided: [] },
  );
  const [later, setLater] = useState<readonly string[]>([]);
  const [noSource, setNoSource] = useState(false);
  const [moved, setMoved] = useState(false);
  const change = (next: Draft) => {
    setDraft(next);
    keepDraft(aircraftId, next);
  };
  const isDecided = (line: LineView) => draft.decided.some(({ equipmentId }) => equipmentId === line.id);
  const left = lines.filter((line) => !isDecided(line));
  const current = left.find((line) => !later.includes(line.id)) ?? left[0];
  const source = draft.source.trim();

  function decide(decided: Omit<Decided, 'source'>): boolean {
    setNoSource(source.length < 3);
    if (source.length < 3) return false;
    change({ ...draft, decided: [...draft.decided, { ...decided, source }] });
    setMoved(true);
    return true;
  }

  return (
    <>
      <div className={fields.field}>
        <Label htmlFor={id}>{t('Document you hold it against')}</Label>
        <Hint id={`${id}-hint`}>
          {t('With revision or date. It is kept for the next items; change it when you turn to another one.')}
          {document !== '' && <> {t('Equipment lists of this type: {source}', { source: document })}</>}
        </Hint>
        <input
          id={id}
          className={fields.input}
          value={draft.source}
          maxLength={300}
          aria-describedby={`${id}-hint${noSource ? ` ${id}-error` : ''}`}
          aria-invalid={noSource || undefined}
          onChange={(event) => change({ ...draft, source: event.target.value })}
        />
        <FieldError id={`${id}-error`}>{noSource && NO_SOURCE}</FieldError>
      </div>
      <p role="status" className={styles.progress}>
        {t('{done} of {all} decided', { done: draft.decided.length, all: lines.length })}
      </p>
      {current && (
        <OneItem
          key={current.id}
          line={current}
          takeFocus={moved}
          onAgrees={(line) => decide({ kind: 'agrees', equipmentId: current.id, line })}
          onNotInstalled={() => decide({ ...notInstalled(current), equipmentId: current.id })}
          onLater={
            left.length > 1
              ? () => {
                  setLater([...later.filter((one) => one !== current.id), current.id]);
                  setMoved(true);
                }
              : null
          }
        />
      )}
      {draft.decided.length > 0 && (
        <SignSitting
          aircraftId={aircraftId}
          lines={lines}
          decided={draft.decided}
          signer={signer}
          takeFocus={moved && !current}
          onTakeBack={(equipmentId) =>
            change({
              ...draft,
              decided: draft.decided.filter((one) => one.equipmentId !== equipmentId),
            })
          }
          onDone={() => {
            keepDraft(aircraftId, null);
            setDraft({ source: draft.source, decided: [] });
            router.refresh();
          }}
        />
      )}
    </>
  );
}
