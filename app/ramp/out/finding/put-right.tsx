'use client';

import { useWords } from '#words';
import { useEffect, useMemo, useState } from 'react';
import {
  draftOfFinding,
  EMPTY_DRAFT,
  sameAnswer,
  SOMETHING_ELSE,
  typedMeasurements,
  type FindingDraft,
  type FindingOffered,
  type ObservationMade,
} from '@/lib/findings/compose-finding';
import { offerFindings } from '@/lib/findings/offer-findings';
import { type ReportFindingInput } from '@/lib/findings/schema';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { readDraft } from '../../_phone/drafts';
import { useOutbox } from '../../_phone/outbox';
import { type KeptDraft, type Outgoing } from '../../_phone/shapes';
import { useWalk } from '../../_phone/walks';
import outStyles from '../out.module.css';
import { knownOf } from './asked';
import { FindingRound } from './finding-round';
import { Outcome } from './outcome';

interface PutRightProps {
  readonly id: string;
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly walkId: string | null;
  /** Writes up another one at the same place; null where that is not offered. */
  readonly onAnother: (() => void) | null;
}

/** What became of a message; and where the server refused it, its form again with what was wrong. */
export function PutRight(props: PutRightProps) {
  const { pack, aircraft } = props;
  const [id, setId] = useState(props.id);
  const message = useOutbox().find((one) => one.id === id);
  if (message?.state === 'refused') {
    return (
      <RefusedRound
        key={`${id} ${message.problem?.code ?? ''} ${message.problem?.say ?? ''}`}
        message={message}
        pack={pack}
        aircraft={aircraft}
        onGone={setId}
      />
    );
  }
  return <Outcome {...props} key={id} id={id} message={message ?? null} />;
}

function RefusedRound(props: {
  message: Outgoing;
  pack: RampPack;
  aircraft: PackAircraft;
  onGone: (id: string) => void;
}) {
  const t = useWords();
  const { message, pack, aircraft, onGone } = props;
  const sent = message.message as unknown as ReportFindingInput | Omit<ObservationMade, 'requestId'>;
  const { station, walkaroundId } = sent;
  const walk = useWalk(aircraft.id);
  // What it named is not there; a write-up never waits for a walkaround.
  const walkId = message.problem?.code === 'not_found' ? null : walkaroundId;
  const offers = useMemo(
    () => offerFindings(pack.findings, station, aircraft.equipment),
    [pack.findings, station, aircraft.equipment],
  );
  const [start] = useState(() => draftOf(message, offers, aircraft));
  const [kept, setKept] = useState<KeptDraft | null>(null);
  const key = `${message.personId}/${aircraft.id}/right/${message.id}`;
  const { foundAt } = sent;

  // What was put right already and not sent yet, over a reload too.
  useEffect(() => {
    let isWanted = true;
    const { id, personId } = message;
    void readDraft(key)
      .catch(() => null)
      .then((found) => {
        if (isWanted) setKept(found ?? { key, personId, requestId: id, bundle: id, foundAt, values: start });
      });
    return () => {
      isWanted = false;
    };
  }, [key, message, foundAt, start]);

  if (!kept) return <p className={outStyles.loading}>{t('One moment…')}</p>;
  return (
    <FindingRound
      pack={pack}
      aircraft={aircraft}
      station={station}
      itemKey={sent.itemKey ?? null}
      walkId={walkId}
      isOnKeptWalk={walkId !== null && walk?.id === walkId}
      offers={offers}
      start={start}
      kept={kept}
      refused={message}
      onGone={onGone}
      onAfresh={null}
    />
  );
}

/** The form as it was when the message was made. */
function draftOf(
  { kind, id, message }: Outgoing,
  offers: readonly FindingOffered[],
  aircraft: PackAircraft,
): FindingDraft {
  const known = knownOf(aircraft);
  if (kind === 'finding') {
    const input = { requestId: id, ...message } as unknown as ReportFindingInput;
    const related = known.find((writeUp) => writeUp.id === input.relatedId);
    return draftOfFinding(input, offers, related ? (related.state === 'closed' ? 'back' : 'worse') : null);
  }
  const input = { requestId: id, ...message } as unknown as ObservationMade;
  const seen = known.find((writeUp) => writeUp.id === input.discrepancyId);
  const offered = offers.find((one) => one.key === seen?.findingKey) ?? null;
  return {
    ...EMPTY_DRAFT,
    finding: offered?.key ?? SOMETHING_ELSE,
    kind: offered ? '' : (seen?.kind ?? ''),
    measurements: typedMeasurements(input.measurements, offered),
    words: input.words,
    phase: input.phase ?? '',
    same: seen ? sameAnswer('same', seen.id) : '',
  };
}
