/** One open write-up: 91.7(a), 91.405(a), 91.213 with and without a minimum equipment list, 91.405(c). */
import type {
  AircraftFacts,
  DeferralFacts,
  DiscrepancyFacts,
  EquipmentFacts,
  MelFacts,
} from '@/lib/rules/aircraft';
import type { UseOfAircraft } from '@/lib/rules/operations';
import { listAsks, met, onToRepair, small, wants, working, workingOfRow } from './equipment';
import { addDays, and, lastDay, type About, type Sheet, type Tri, valueOf } from './sheet';

export function judgeWriteUp(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
  sheet: Sheet,
): void {
  const about: About = { kind: 'discrepancy', id: d.id };
  const severity = valueOf(d.severity);
  if (severity === null) sheet.unknown('91.7(a)', about);
  if (severity === 'grounding') sheet.bar('91.7(a)', about);
  if (d.kind === 'inoperative') return inoperative(aircraft, d, use, sheet, about);
  // Servicing is owed before flight, whatever anybody found.
  if (d.kind === 'servicing') return sheet.bar('91.7(a)', about);
  // Damage, wear, leaks and the like are no inoperative equipment: repaired, or found within a limit with a source.
  if (d.kind !== 'cosmetic' && d.withinLimits === null) sheet.bar('91.405(a)', about);
  if (severity === 'limiting') sheet.limit('91.7(b)');
}

function inoperative(
  aircraft: AircraftFacts,
  d: DiscrepancyFacts,
  use: UseOfAircraft,
  sheet: Sheet,
  about: About,
): void {
  const row = aircraft.equipment.find(({ id }) => id === d.equipmentId);
  const out = valueOf(d.inoperativeCount);
  if (row === undefined || !row.confirmed.known || out === null) return sheet.unknown('91.213(a)', about);
  if (!Number.isInteger(out) || out < 1 || out > row.installed) return sheet.unknown('91.213(a)', about);
  // Not deferred. What the ways of the section would say besides only matters for what nobody knows.
  if (d.deferral === null) sheet.bar('91.213(a)', about);

  // (a)(1), (a)(2): with a list in force only the list counts; what is not known or not aboard closes both ways.
  const mel = aircraft.mel.known ? aircraft.mel.value : null;
  const letter = mel === null ? null : valueOf(mel.letterAboard);
  if (!aircraft.mel.known) sheet.unknown('91.213(a)(1)', about);
  else if (mel !== null && letter === null) sheet.unknown('91.213(a)(2)', about);
  else if (mel !== null && letter === false) sheet.bar('91.213(a)(2)', about);
  else if (mel === null) withoutList(aircraft, row, d.deferral, use, sheet, about);
  else withList(aircraft, mel, row, d.deferral, use, sheet, about);
  if (d.deferral === null) return;

  // A list that came or went since closes the way on which it was deferred.
  const wrongWay =
    aircraft.mel.known &&
    (mel === null || letter === true) &&
    (mel !== null) !== (d.deferral.basis === 'mel');
  if (wrongWay) sheet.bar(mel === null ? '91.213(a)(1)' : '91.213(a)(5)', about);
  // 91.405(c): no required inspection has passed over it in silence.
  if (d.deferral.inspectionsSince.some(({ disposition }) => disposition === null))
    sheet.bar('91.405(c)', about);
  // 91.407(a)(2): a permit stands in for 91.213 and its steps, not for what nobody signed for.
  if (use.specialFlightPermit !== null && isWork(d.deferral))
    say(sheet, '43.9(a)', about, d.deferral.maintenanceRecordSigned);
  sheet.limit('91.213');
}

/** (d)(1), (d)(2), (d)(4). */
function withoutList(
  aircraft: AircraftFacts,
  row: EquipmentFacts,
  deferral: DeferralFacts | null,
  use: UseOfAircraft,
  sheet: Sheet,
  about: About,
): void {
  const open = openness(aircraft);
  say(sheet, open.cite, about, open.is);
  const light = row.function === 'anticollision-lights' && onToRepair(use);
  if (!light) {
    const typed = valueOf(row.vfrDayTypeDesign);
    say(sheet, '91.213(d)(2)(i)', about, typed === null ? null : !typed);
    const asked = listAsks(row, use);
    say(sheet, '91.213(d)(2)(ii)', about, asked === null ? null : atLeast(aircraft, row, asked));
  }
  part91(aircraft, row, use, sheet, about);
  directives(aircraft, row, '91.213(d)(2)(iv)', sheet, about);
  if (deferral === null) return;
  recordAndPlacard(deferral, sheet, about);
  // A record of a removed transmitter that was begun is complete; without one (f)(10) gives nothing, see `eltRelief`.
  if (deferral.eltRemoval !== null) say(sheet, '91.207(f)(10)(i)', about, deferral.eltRemoval.recordComplete);
  const determination = valueOf(deferral.determination);
  if (determination === null) return sheet.unknown('91.213(d)(4)', about);
  const { by, on } = determination;
  const pilot = by.pilotGrade !== null && by.pilotGrade !== 'student' && by.pilotRatedForAircraft;
  const able = pilot || by.mechanicRatings.length > 0 || by.repairStation;
  say(sheet, '91.213(d)(4)', about, able && on >= deferral.recordedOn);
}

/** (d)(1)(i) speaks of types without a published list, (ii) of those with one. Where both answer alike it is all the same. */
function openness({ type, ...aircraft }: AircraftFacts): { readonly is: Tri; readonly cite: string } {
  const turbine = valueOf(type.turbine);
  const nonturbine: Tri = turbine === null ? null : !turbine;
  const isSmall = small({ type, ...aircraft });
  const without: Tri = type.category === 'airplane' ? nonturbine : true;
  const withMaster: Tri =
    type.category === 'airplane'
      ? and(nonturbine, isSmall)
      : type.category === 'rotorcraft'
        ? isSmall
        : type.category === 'glider' || type.category === 'lighter-than-air';
  if (without !== null && without === withMaster) return { is: without, cite: '91.213(d)(1)' };
  const published = valueOf(type.mmelPublished);
  if (published === null) return { is: null, cite: '91.213(d)(1)' };
  return published ? { is: withMaster, cite: '91.213(d)(1)(ii)' } : { is: without, cite: '91.213(d)(1)(i)' };
}

/** Whether so many of the item still work; null while another write-up on it does not say how many are out. */
function atLeast(aircraft: AircraftFacts, row: EquipmentFacts, count: number): Tri {
  const open = aircraft.discrepancies.filter((d) => d.kind === 'inoperative' && d.equipmentId === row.id);
  if (open.some(({ inoperativeCount }) => !inoperativeCount.known)) return null;
  return workingOfRow(aircraft, row) >= count;
}

/** (d)(2)(iii) and (b)(3): part 91 wants it for this kind of flight, with more working than there are. */
function part91(
  aircraft: AircraftFacts,
  row: EquipmentFacts,
  use: UseOfAircraft,
  sheet: Sheet,
  about: About,
): void {
  for (const want of wants(aircraft, use)) {
    if (want.fn !== row.function) continue;
    const is = met(aircraft, want);
    const unknownHere = working(aircraft, want.fn) === null ? '91.213(d)(2)(iii)' : want.cite;
    if (is === null) sheet.unknown(unknownHere, about);
    if (is === false && want.relief === null) sheet.bar(want.cite, about);
  }
}

function directives(
  aircraft: AircraftFacts,
  row: EquipmentFacts,
  cite: string,
  sheet: Sheet,
  about: About,
): void {
  if (!aircraft.directives.known) return sheet.unknown(cite, about);
  const wanted = aircraft.directives.value.filter(({ requiresOperable }) => requiresOperable);
  if (wanted.some(({ equipmentId }) => equipmentId === row.id)) sheet.bar(cite, about);
  // One that names nothing may mean this.
  if (wanted.some(({ equipmentId }) => equipmentId === null)) sheet.unknown(cite, about);
}

const DAYS = { B: 3, C: 10, D: 120 } as const;

/** (a)(3), (a)(5), (b), and the clock of the list. */
function withList(
  aircraft: AircraftFacts,
  mel: MelFacts,
  row: EquipmentFacts,
  deferral: DeferralFacts | null,
  use: UseOfAircraft,
  sheet: Sheet,
  about: About,
): void {
  const entries = mel.items.filter(({ equipmentId }) => equipmentId === row.id);
  if (entries.length === 0) return sheet.bar('91.213(a)(3)(ii)', about);
  const named = deferral?.melItemId ?? null;
  const meant = named === null ? entries : entries.filter(({ id }) => id === named);
  const [entry] = meant;
  if (entry === undefined || meant.length > 1) return sheet.unknown('91.213(a)(3)(ii)', about);
  // It is written for an aircraft with as many of them.
  say(sheet, '91.213(a)(3)(ii)', about, entry.installed === row.installed);
  say(sheet, '91.213(a)(3)(ii)', about, atLeast(aircraft, row, entry.requiredForDispatch));
  if (use.light === 'night') say(sheet, '91.213(a)(5)', about, entry.allowed.night);
  if (use.rules === 'IFR') say(sheet, '91.213(a)(5)', about, entry.allowed.ifr);
  if (use.hire) say(sheet, '91.213(a)(5)', about, entry.allowed.hire);
  directives(aircraft, row, '91.213(b)(2)', sheet, about);
  part91(aircraft, row, use, sheet, about);
  if (deferral === null) return;
  recordAndPlacard(deferral, sheet, about);
  const procedures = entry.operatingProcedure !== null || entry.maintenanceProcedure !== null;
  if (procedures) say(sheet, '91.213(a)(5)', about, deferral.melProceduresDone);
  if (!mel.enforceCategories) return;
  const days = entry.category === 'A' ? valueOf(entry.categoryADays) : DAYS[entry.category];
  if (days === null) return sheet.unknown(`mmel-category-a`, about);
  const end = addDays(deferral.recordedOn, days);
  const extendable = entry.category === 'B' || entry.category === 'C';
  const authority = extendable && mel.extension !== null && mel.extension.categories.includes(entry.category);
  // Once, and by no more than the same interval again.
  const longest = addDays(end, days);
  const asked = authority ? (deferral.extendedThrough ?? end) : end;
  const until = asked > longest ? longest : asked > end ? asked : end;
  say(sheet, `mmel-category-${entry.category.toLowerCase()}`, about, lastDay(use) <= until);
}

/** (d)(3)(i): removing is always work; deactivating is where somebody said so. */
const isWork = (deferral: DeferralFacts): boolean =>
  deferral.method === 'removed' || deferral.deactivationIsMaintenance;

/** (d)(3), which a list asks for as well: recorded where it is work, placarded always. */
function recordAndPlacard(deferral: DeferralFacts, sheet: Sheet, about: About): void {
  const way = deferral.method === 'removed' ? '91.213(d)(3)(i)' : '91.213(d)(3)(ii)';
  const list = deferral.basis === 'mel';
  if (isWork(deferral)) say(sheet, list ? '43.9(a)' : way, about, deferral.maintenanceRecordSigned);
  say(sheet, list ? '91.213(a)(5)' : way, about, deferral.placardPlaced);
}

function say(sheet: Sheet, cite: string, about: About, inOrder: Tri): void {
  if (inOrder === null) sheet.unknown(cite, about);
  if (inOrder === false) sheet.bar(cite, about);
}
