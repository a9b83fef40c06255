'use client';

import { useWords } from '#words';
import { useEffect, useState } from 'react';
import { EMPTY_DRAFT, type FindingDraft, type FindingOffered } from '@/lib/findings/compose-finding';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { newRequestId } from '../../../_ui/request-id';
import { draftKey, dropDraft, readDraft } from '../../_phone/drafts';
import { type KeptDraft } from '../../_phone/shapes';
import outStyles from '../out.module.css';
import { FindingRound } from './finding-round';
import { PutRight } from './put-right';

export interface FindingFormProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly station: string;
  readonly itemKey: string | null;
  readonly walkId: string | null;
  /** The walkaround is the one under way on this phone. */
  readonly isOnKeptWalk: boolean;
  readonly offers: readonly FindingOffered[];
  /** What the address and the walk fill in beforehand. */
  readonly start: FindingDraft;
}

/** One finding after the other at one place: what was typed before, or a new one; then what became of it. */
export function FindingForm(props: FindingFormProps) {
  const t = useWords();
  const { pack, aircraft, station, itemKey, start } = props;
  const key = draftKey(pack.person.id, aircraft.id, station, itemKey);
  const [kept, setKept] = useState<KeptDraft | null>(null);
  const [goneId, setGoneId] = useState<string | null>(null);
  // Only what there was when the form opened: later the address fills in nothing any more.
  const [first] = useState(start);

  useEffect(() => {
    let isWanted = true;
    void readDraft(key)
      .catch(() => null)
      .then((found) => {
        if (isWanted) setKept(found ?? freshDraft(key, pack.person.id, first));
      });
    return () => {
      isWanted = false;
    };
  }, [key, pack.person.id, first]);

  function startAfresh(values: FindingDraft) {
    void dropDraft(key);
    setKept(freshDraft(key, pack.person.id, values));
    setGoneId(null);
  }

  if (!kept) return <p className={outStyles.loading}>{t('One moment…')}</p>;
  if (goneId !== null) {
    const { walkId } = props;
    const phase = first.phase;
    return (
      <PutRight
        id={goneId}
        pack={pack}
        aircraft={aircraft}
        walkId={walkId}
        onAnother={() => startAfresh({ ...EMPTY_DRAFT, phase })}
      />
    );
  }
  return (
    <FindingRound
      key={kept.requestId}
      {...props}
      kept={kept}
      start={first}
      refused={null}
      onGone={setGoneId}
      onAfresh={() => startAfresh(first)}
    />
  );
}

/** The photos' bundle is named like the message, so that a refused message finds its photos again. */
function freshDraft(key: string, personId: string, values: FindingDraft): KeptDraft {
  const requestId = newRequestId();
  return { key, personId, requestId, bundle: requestId, foundAt: new Date().toISOString(), values };
}
