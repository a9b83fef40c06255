'use client';

import { usePack } from '../_phone/pack';
import { AircraftDrawing } from '../out/drawing/aircraft-drawing';
import { type MarkedWriteUp } from '../out/drawing/marked';

/**
 * The drawing on the server's page of one aircraft: write-ups as the server has just read them, stations as this phone took
 * them along. Before it has, the write-ups stand at their places without numbers.
 */
export function DrawnAircraft(props: { aircraftId: string; writeUps: readonly MarkedWriteUp[] }) {
  const pack = usePack()?.pack;
  const aircraft = pack?.aircraft.find(({ id }) => id === props.aircraftId);
  const list = aircraft && pack?.lists[aircraft.typeId];
  return (
    <AircraftDrawing
      aircraftId={props.aircraftId}
      stations={list?.list.stations ?? []}
      writeUps={props.writeUps}
      walk={null}
    />
  );
}
