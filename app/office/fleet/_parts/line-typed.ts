import { saidOf } from '@/lib/aircraft/asked';
import { type LineColumns } from '@/lib/equipment/line';

/** A line as a form holds it. Nothing is chosen beforehand. */
export const EMPTY_LINE = {
  name: '',
  function: '',
  jasc: '',
  installed: '',
  vfrDayTypeDesign: '',
  requiredDayVfr: '',
  requiredNightVfr: '',
  requiredDayIfr: '',
  requiredNightIfr: '',
  authority: [] as string[],
};
export type LineAsTyped = typeof EMPTY_LINE;

const count = (value: number | null): string => (value === null ? '' : String(value));

/** A line as the form shows it. */
export const lineAsTyped = (line: LineColumns): LineAsTyped => ({
  name: line.name,
  function: line.function,
  jasc: line.jasc,
  installed: String(line.installed),
  vfrDayTypeDesign: saidOf(line.vfrDayTypeDesign),
  requiredDayVfr: count(line.requiredDayVfr),
  requiredNightVfr: count(line.requiredNightVfr),
  requiredDayIfr: count(line.requiredDayIfr),
  requiredNightIfr: count(line.requiredNightIfr),
  authority: [...line.authority],
});
