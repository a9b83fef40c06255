'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type Problem } from '@/lib/problems';
import { Button, LinkButton } from '../../_ui/button';
import { Moment } from '../../_ui/moment';
import { ProblemNotice } from '../../_ui/problem-notice';
import { keep, useKept, walkKey } from '../_phone/kept';
import { beginWalk, sendStart, type Walk } from '../_phone/walk';
import styles from './ramp.module.css';

/**
 * Begins a walkaround, or goes on with the one this phone has begun. With no connection it begins all the same: the
 * server is told with the first thing that gets through.
 */
export function StartWalk(props: { personId: string; aircraftId: string; zone: string }) {
  const { personId, aircraftId, zone } = props;
  const key = walkKey(personId, aircraftId);
  const walk = useKept<Walk>(key);
  const router = useRouter();
  const [problem, setProblem] = useState<Problem | null>(null);
  const [busy, setBusy] = useState(false);
  const path = `/ramp/${aircraftId}/walk`;

  async function begin() {
    if (busy) return;
    setBusy(true);
    setProblem(null);
    const begun = beginWalk(personId, aircraftId, new Date().toISOString());
    const sent = await sendStart(personId, begun);
    setBusy(false);
    if (!sent.ok && sent.problem && sent.problem.code !== 'try_again') {
      keep(key, null);
      setProblem(sent.problem);
      return;
    }
    router.push(path);
  }

  if (walk && !busy) {
    return (
      <div className={styles.answer}>
        <LinkButton href={path} weight="main" wide>
          Go on with the walkaround
        </LinkButton>
        <p className={styles.soft}>
          Begun <Moment at={walk.startedAt} zone={zone} />, {Object.keys(walk.answers).length} stations
          answered.
        </p>
      </div>
    );
  }
  return (
    <div className={styles.answer}>
      <Button weight="main" wide onClick={() => void begin()} aria-disabled={busy || walk === undefined}>
        {busy ? 'Starting…' : 'Start walkaround'}
      </Button>
      {problem && <ProblemNotice problem={problem} />}
    </div>
  );
}
