import { WALKAROUND_STATIONS } from '@/lib/rules/findings/stations';
import { usualStationOf } from '@/lib/rules/walkaround/areas';
import { type PackAircraft, type PackList } from '@/lib/walkarounds/pack';
import rampStyles from '../../_parts/ramp.module.css';
import { AircraftDrawing } from '../drawing/aircraft-drawing';
import { Go } from '../place';

/** Asks where first: the areas of this aircraft's list in walking order, then what the list leaves out; or the drawing. */
export function Where(props: {
  aircraft: PackAircraft;
  list: PackList | undefined;
  hrefOf: (area: string) => string;
}) {
  const { aircraft, list, hrefOf } = props;
  const areas = areasOf(list);
  return (
    <>
      <details className={rampStyles.fold}>
        <summary>Show it on a drawing</summary>
        <AircraftDrawing aircraftId={aircraft.id} stations={areas} writeUps={aircraft.writeUps} walk={null} />
      </details>
      <ul className={rampStyles.rows}>
        {areas.map(({ area, title, lookFor }) => (
          <li key={area}>
            <Go href={hrefOf(area)} className={rampStyles.row}>
              <b className={rampStyles.rowWhole}>{title}</b>
              <span className={`${rampStyles.rowWhole} ${rampStyles.soft}`}>{lookFor}</span>
            </Go>
          </li>
        ))}
      </ul>
    </>
  );
}

/** A finding can be anywhere, so the usual stations that no area of the list belongs to stand behind it. */
function areasOf(list: PackList | undefined) {
  const listed = (list?.list.stations ?? []).map(({ area, title, items }) => ({
    area,
    title,
    lookFor: items.map((item) => item.title).join(', '),
  }));
  const covered = new Set<string>(listed.map(({ area }) => usualStationOf(area)));
  const others = WALKAROUND_STATIONS.filter(({ key }) => !covered.has(key));
  return [...listed, ...others.map(({ key, title, lookFor }) => ({ area: key, title, lookFor }))];
}
