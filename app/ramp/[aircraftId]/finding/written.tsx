'use client';

import { useEffect, useRef } from 'react';
import { type ReportedFinding } from '@/lib/findings/report-finding';
import { untilWhat } from '@/lib/findings/until-what';
import { Button, LinkButton } from '../../../_ui/button';
import { SeverityMark } from '../../../_ui/marks';
import { Notice } from '../../../_ui/notice';
import { Card } from '../../../_ui/page';
import { VerdictLines } from '../../../_ui/verdict-lines';
import { PhotoList } from '../../_parts/take-photos';
import { counted } from '../../_parts/words';
import { retryPhotos, usePhotos } from '../../_phone/photo-outbox';
import styles from './finding.module.css';

/** The server has it: its number, what it means, and how far the photos are. */
export function Written(props: {
  finding: ReportedFinding;
  arrivedEarlier: boolean;
  registration: string;
  aircraftId: string;
  isOnWalk: boolean;
  bundle: string;
  onAnother: () => void;
}) {
  const { finding, arrivedEarlier, registration, aircraftId, isOnWalk, bundle, onAnother } = props;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <section className={styles.written}>
      <h2 ref={heading} tabIndex={-1}>
        Sent: {finding.number} {finding.title}
      </h2>
      <div>
        <SeverityMark severity={finding.severity} />
      </div>
      <p className={styles.until}>{untilWhat(registration, finding.severity, finding.settledBy)}</p>
      {arrivedEarlier && (
        <Notice tone="blue" title="Your first try had arrived after all.">
          <p>
            The write-up has the words you sent then. What you changed since is not in it; if it matters,
            write it up as well.
          </p>
        </Notice>
      )}
      <Photos bundle={bundle} />
      <Card>
        <VerdictLines lines={finding.reasons} />
      </Card>
      <div className={styles.next}>
        {isOnWalk ? (
          <LinkButton href={`/ramp/${aircraftId}/walk`} weight="main" wide>
            Back to the walkaround
          </LinkButton>
        ) : (
          <LinkButton href={`/ramp/${aircraftId}`} weight="main" wide>
            Back to {registration}
          </LinkButton>
        )}
        <LinkButton href={`/ramp/write-up/${finding.discrepancyId}`} wide>
          See the write-up
        </LinkButton>
        <Button wide onClick={onAnother}>
          Another finding here
        </Button>
      </div>
    </section>
  );
}

function Photos({ bundle }: { bundle: string }) {
  const photos = usePhotos().filter((photo) => photo.bundle === bundle);
  if (photos.length === 0) return null;
  const sent = photos.filter((photo) => photo.state === 'sent').length;
  const isStuck = photos.some((photo) => photo.state === 'not-sent');
  return (
    <div className={styles.written}>
      <p role="status">
        {sent === photos.length
          ? `${counted(sent, 'photo')} sent.`
          : `${sent} of ${counted(photos.length, 'photo')} sent.`}
      </p>
      <PhotoList photos={photos} />
      {isStuck && <Button onClick={retryPhotos}>Send the photos again</Button>}
    </div>
  );
}
