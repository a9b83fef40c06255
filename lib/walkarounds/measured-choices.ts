import { FINDING_CATALOGUE } from '../rules/findings/catalogue';
import { MEASURE_UNITS, MEASUREMENTS } from '../rules/findings/measurements';

/** What a list can measure, each with the usual findings that are about that measurement, for the editor to offer. */
export const measuredChoices = () =>
  Object.entries(MEASUREMENTS).map(([value, { label, unit }]) => ({
    value,
    label,
    unit: MEASURE_UNITS[unit].label,
    whole: MEASURE_UNITS[unit].decimals === 0,
    findings: FINDING_CATALOGUE.filter((finding) =>
      finding.measurements.some(({ key }) => key === value),
    ).map(({ key, title }) => ({ value: key, label: title })),
  }));
