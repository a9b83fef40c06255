import { useWords } from '#words';
import { type Translate } from '@/lib/words/translate';
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
  const t = useWords();
  const { aircraft, list, hrefOf } = props;
  const areas = areasOf(t, list);
  return (
    <>
      <details className={rampStyles.fold}>
        <summary>{t('Show it on a drawing')}</summary>
        <AircraftDrawing aircraftId={aircraft.id} stations={areas} writeUps={aircraft.writeUps} walk={null} />
      </details>
      <ul className={rampStyles.rows}>
        {areas.map(({ area, title, lookFor }) => (
          <li key={area}>
            <Go href={hrefOf(area)} className={rampStyles.row}>
              <b className={rampStyles.rowWhole}>{t(title)}</b>
              <span className={`${rampStyles.rowWhole} ${rampStyles.soft}`}>{t(lookFor)}</span>
            </Go>
          </li>
        ))}
      </ul>
    </>
  );
}

/** A finding can be anywhere, so the usual stations that no area of the list belongs to stand behind it. */
function areasOf(t: Translate, list: PackList | undefined) {
  const listed = (list?.list.stations ?? []).map(({ area, title, items }) => ({
    area,
    title,
    lookFor: items.map((item) => t(item.title)).join(', '),
  }));
  const covered = new Set<string>(listed.map(({ area }) => usualStationOf(area)));
  const others = WALKAROUND_STATIONS.filter(({ key }) => !covered.has(key));
  return [...listed, ...others.map(({ key, title, lookFor }) => ({ area: key, title, lookFor }))];
}
