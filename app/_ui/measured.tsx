import { measurementOf, sayMeasured } from '@/lib/rules/findings/measurements';
import { FactList } from './page';

/** Values of a measurement this version does not know are shown with their key: nothing measured is left out. */
export function Measured({ measurements }: { measurements: Readonly<Record<string, number>> }) {
  const taken = Object.entries(measurements);
  if (taken.length === 0) return null;
  return (
    <FactList
      facts={taken.map(([key, value]) => {
        const measurement = measurementOf(key);
        return measurement
          ? { name: measurement.label, value: sayMeasured(value, measurement.unit) }
          : { name: key.replaceAll('-', ' '), value: `${value}, unit not known` };
      })}
    />
  );
}
