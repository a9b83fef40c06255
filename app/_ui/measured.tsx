import { useWords } from '#words';
import { measurementOf } from '@/lib/rules/findings/measurements';
import { sayInUnits, type Units } from '@/lib/units/say';
import { FactList } from './page';

/** Values of a measurement this version does not know are shown with their key: nothing measured is left out. */
export function Measured(props: { measurements: Readonly<Record<string, number>>; units: Units }) {
  const { measurements, units } = props;
  const t = useWords();
  const taken = Object.entries(measurements);
  if (taken.length === 0) return null;
  return (
    <FactList
      facts={taken.map(([key, value]) => {
        const measurement = measurementOf(key);
        return measurement
          ? { name: measurement.label, value: sayInUnits(value, measurement.unit, units) }
          : { name: key.replaceAll('-', ' '), value: t('{value}, unit not known', { value }) };
      })}
    />
  );
}
