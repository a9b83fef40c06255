'use client';

import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useMemo, useRef, useState, type ReactNode } from 'react';
import { offerFindings } from '@/lib/findings/offer-findings';
import { areaTitle, isArea } from '@/lib/rules/walkaround/areas';
import { type PackAircraft, type RampPack } from '@/lib/walkarounds/pack';
import { PageTitle } from '../../../_ui/page';
import { useIsOutboxRead, useOutbox } from '../../_phone/outbox';
import { useWalk } from '../../_phone/walks';

import outStyles from '../out.module.css';
import { Go } from '../place';
import { pathAt } from '../walk/where';
import { itemIn, startingDraft, stationIn } from './asked';
import { FindingForm } from './finding-form';
import { PutRight } from './put-right';
import { Where } from './where';

interface FindingProps {
  readonly pack: RampPack;
  readonly aircraft: PackAircraft;
  readonly query: URLSearchParams;
}

/**
 * Writing up a finding. Query: `station` (asked first when it is missing), `item`, `walk`, `related`, `phase`, `finding`,
 * `place`, `words`, `measured` (see finding-path.ts); or `right`, the number of a message the server refused.
 */
export function FindingView({ pack, aircraft, query }: FindingProps) {
  const t = useWords();
  const right = query.get('right');
  const asked = query.get('station');
  const station = asked !== null && isArea(asked) ? asked : null;
  useFocusOnNewStep(`${right ?? ''} ${station ?? ''}`);
  if (right !== null) return <Refused id={right} pack={pack} aircraft={aircraft} />;
  if (station === null) {
    const hrefOf = (area: string) => {
      const next = new URLSearchParams(query);
      next.set('station', area);
      return `/ramp/${aircraft.id}/finding?${next.toString()}`;
    };
    return (
      <Column
        back={backTo(t, aircraft, query.get('walk'), null)}
        title={t('Where did you find it?')}
        lead={null}
      >
        <Where aircraft={aircraft} list={pack.lists[aircraft.typeId]} hrefOf={hrefOf} />
      </Column>
    );
  }
  return <AtStation key={station} pack={pack} aircraft={aircraft} query={query} station={station} />;
}

function AtStation(props: FindingProps & { station: string }) {
  const t = useWords();
  const { pack, aircraft, query, station } = props;
  const walk = useWalk(aircraft.id);
  const walkId = query.get('walk');
  const itemKey = query.get('item');
  // The list as it was when the walk began; a new version meanwhile does not change it.
  const list = walk && walk.id === walkId ? walk.list : pack.lists[aircraft.typeId];
  const item = itemIn(list, station, itemKey);
  const offers = useMemo(
    () => offerFindings(pack.findings, station, aircraft.equipment),
    [pack.findings, station, aircraft.equipment],
  );
  const where = t(stationIn(list, station)?.title ?? areaTitle(station));
  return (
    <Column
      back={backTo(t, aircraft, walkId, station)}
      title={t('Write up a finding')}
      lead={`${aircraft.registration}, ${where}${item ? `: ${t(item.title)}` : ''}`}
    >
      {walk === undefined ? (
        <p className={outStyles.loading}>{t('One moment…')}</p>
      ) : (
        <FindingForm
          key={itemKey ?? ''}
          pack={pack}
          aircraft={aircraft}
          station={station}
          itemKey={itemKey}
          walkId={walkId}
          isOnKeptWalk={walk?.id === walkId}
          offers={offers}
          start={startingDraft(query, offers, aircraft, item, walk?.items[itemKey ?? ''])}
        />
      )}
    </Column>
  );
}

/** A message the server refused, opened again with what was wrong. */
function Refused(props: { id: string; pack: RampPack; aircraft: PackAircraft }) {
  const t = useWords();
  const isRead = useIsOutboxRead();
  return isRead ? <RefusedOnceRead {...props} /> : <p className={outStyles.loading}>{t('One moment…')}</p>;
}

function RefusedOnceRead({ id, pack, aircraft }: { id: string; pack: RampPack; aircraft: PackAircraft }) {
  const t = useWords();
  const message = useOutbox().find((one) => one.id === id);
  // As it was when the screen opened: put right, it may go out under another number.
  const [was] = useState(message);
  return (
    <Column
      back={backTo(t, aircraft, null, null)}
      title={t('Put right')}
      lead={was?.label ?? aircraft.registration}
    >
      {was?.kind === 'finding' || was?.kind === 'observation' ? (
        <PutRight id={id} pack={pack} aircraft={aircraft} walkId={null} onAnother={null} />
      ) : (
        <p>{t('This message is no longer on this phone.')}</p>
      )}
    </Column>
  );
}

/** The way back: to the same place of the walk, or to the aircraft. */
const backTo = (t: Translate, aircraft: PackAircraft, walkId: string | null, station: string | null) =>
  walkId === null
    ? { href: `/ramp/${aircraft.id}`, label: aircraft.registration }
    : { href: pathAt(aircraft.id, station), label: t('Walkaround') };

function Column(props: {
  back: { readonly href: string; readonly label: string };
  title: string;
  lead: string | null;
  children: ReactNode;
}) {
  const { back, title, lead, children } = props;
  return (
    <div className={outStyles.column}>
      <div>
        <Go href={back.href} className={outStyles.back}>
          <span aria-hidden="true">←</span> {back.label}
        </Go>
        <PageTitle lead={lead}>{title}</PageTitle>
      </div>
      {children}
    </div>
  );
}

/** From one step to the next the path stays, so nobody else moves the page to the top and the focus into it. */
function useFocusOnNewStep(step: string) {
  const before = useRef(step);
  useEffect(() => {
    if (before.current === step) return;
    before.current = step;
    window.scrollTo(0, 0);
    document.getElementById('content')?.focus({ preventScroll: true });
  }, [step]);
}
