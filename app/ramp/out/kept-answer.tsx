'use client';

import { Say, useWords } from '#words';
import { said } from '@/lib/words/said';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { momentInWords } from '../../_ui/moment';
import { Tag, type Size } from '../../_ui/tag';
import { useOutbox } from '../_phone/outbox';
import { PhoneLines } from './phone-lines';
import styles from './out.module.css';

const LOOKS = {
  go: { tone: 'grey', shape: 'dashes', word: said('Go') },
  'go-with-limits': { tone: 'amber', shape: 'wedge', word: said('Go with limits') },
  'no-go': { tone: 'red', shape: 'block', word: said('No go') },
} as const;

/**
 * The answer this phone took along. It is never a fresh go: a go stands in grey, with its time, and says that nobody has
 * checked since; once this phone itself has written something, it is shown no more. No go stays no go.
 */
export function KeptAnswer(props: { aircraft: PackAircraft; asOf: string; now: number; size?: Size }) {
  const t = useWords();
  const { aircraft, asOf, now, size } = props;
  const { answer, zone } = aircraft;
  const isOvertaken = useWrittenSince(aircraft.id, asOf) > 0;
  if (!answer) {
    return (
      <Tag tone="grey" shape="dashes" size={size}>
        {t('Not looked at')}
      </Tag>
    );
  }
  const { tone, shape, word } = LOOKS[answer.outcome];
  if (isOvertaken && answer.outcome !== 'no-go') {
    return (
      <Tag tone="amber" shape="wedge" size={size}>
        {t('Not known: something was written on this phone since {asOf}', {
          asOf: asOfInWords(asOf, zone, now),
        })}
      </Tag>
    );
  }
  return (
    <Tag tone={tone} shape={shape} size={size}>
      {t('{word} as of {asOf}', { word: t(word), asOf: asOfInWords(asOf, zone, now) })}
    </Tag>
  );
}

/** What was written on this phone and is not in the answer it took along. */
const WRITES: ReadonlySet<string> = new Set(['finding', 'observation', 'walk-finish', 'meters-in']);

function useWrittenSince(aircraftId: string, asOf: string): number {
  return useOutbox().filter(
    ({ aircraftId: of, kind, state, sentAt }) =>
      of === aircraftId && WRITES.has(kind) && (state !== 'sent' || (sentAt ?? '') > asOf),
  ).length;
}

/** The same with its use, its reasons, and what it is worth. */
export function KeptAnswerInFull(props: { aircraft: PackAircraft; pack: RampPack; now: number }) {
  const t = useWords();
  const { aircraft, pack, now } = props;
  const { answer, zone, baseIdent } = aircraft;
  return (
    <section className={styles.answer} aria-label={t('The answer this phone keeps')}>
      <KeptAnswer aircraft={aircraft} asOf={pack.asOf} now={now} />
      {answer ? (
        <>
          <p>
            <Say
              text="<b>{name}</b>, at {baseIdent}. {which}"
              parts={{ b: <b /> }}
              values={{
                name: t(answer.name),
                baseIdent,
                which:
                  answer.outcome === 'no-go'
                    ? t('What was signed since is not in it.')
                    : t('Not checked since {asOf}: this is no answer for a flight now.', {
                        asOf: asOfInWords(pack.asOf, zone, now),
                      }),
              }}
            />
          </p>
          {answer.lines.length > 0 && <PhoneLines lines={answer.lines} paragraphs={pack.paragraphs} />}
        </>
      ) : (
        <p>{t('No answer was taken along. Unknown is never go.')}</p>
      )}
    </section>
  );
}

/** "14:32 PST" on the same day at the base, else the whole moment. `now` in milliseconds. */
export function asOfInWords(asOf: string, zone: string, now: number): string {
  const whole = momentInWords(asOf, zone);
  const today = momentInWords(new Date(now).toISOString(), zone);
  const day = (words: string) => words.slice(0, words.indexOf(','));
  return day(whole) === day(today) ? momentInWords(asOf, zone, true) : whole;
}
