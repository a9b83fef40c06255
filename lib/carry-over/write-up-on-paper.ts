/** A write-up as a paper has it, held against the aircraft it is of. Pure; nothing is guessed, and every fault names its column. */
import type { FindingKind, Severity } from '../rules/aircraft';
import {
  answered,
  canBeDeferredKind,
  judgeDeterminerOnPaper,
  type DeterminerOnPaper,
  type JudgedOnPaper,
  type OnPaper,
} from '../rules/carried-over';
import type { CalendarDate } from '../rules/facts';
import { jascCode, partOf } from '../rules/jasc';
import { said } from '../words/said';
import type { WrittenUp } from './write-up-columns';

/** What has to be known of the aircraft to read its papers. */
export interface AircraftOfPaper {
  readonly id: string;
  readonly registration: string;
  /** Category and class rating, for example airplane-single-engine-land. */
  readonly rating: string;
  readonly zone: string;
  /** Today at its base. */
  readonly today: CalendarDate;
  readonly equipment: readonly { readonly id: string; readonly name: string; readonly installed: number }[];
  /** Items of the minimum equipment list in force; empty when there is none. */
  readonly melItems: readonly { readonly id: string; readonly title: string; readonly equipmentId: string }[];
}

export interface FaultOnPaper {
  readonly field: keyof WrittenUp;
  readonly message: string;
}

export interface CarriedDeferral {
  readonly basis: '91.213(d)' | 'mel';
  readonly melItem: { readonly id: string; readonly title: string } | null;
  readonly method: 'removed' | 'deactivated';
  readonly methodWords: string;
  /** Not known counts as maintenance: the record is then owed. */
  readonly isMaintenance: boolean;
  readonly recordedOn: CalendarDate;
  readonly determinedOn: CalendarDate | null;
  readonly determiner: DeterminerOnPaper;
  readonly judged: JudgedOnPaper;
  readonly noHazard: OnPaper;
  readonly countedTogether: OnPaper;
  readonly record: { readonly signed: OnPaper; readonly by: string; readonly authorised: OnPaper };
  readonly placard: { readonly inPlace: OnPaper; readonly wording: string; readonly location: string };
  readonly proceduresDone: OnPaper;
  readonly eltRemovedOn: CalendarDate | null;
  readonly eltRecordComplete: boolean | null;
}

export interface CarriedWriteUp {
  readonly foundOn: CalendarDate;
  readonly foundBy: string;
  readonly words: string;
  readonly kind: FindingKind;
  readonly jasc: string;
  readonly equipmentId: string | null;
  readonly inoperativeCount: number | null;
  readonly place: string;
  readonly severity: Severity | null;
  readonly document: string;
  readonly deferral: CarriedDeferral | null;
}

type Read<T> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly faults: readonly FaultOnPaper[] };

/** The write-up of one row or form; every fault at once. */
export function writeUpOnPaper(written: WrittenUp, aircraft: AircraftOfPaper): Read<CarriedWriteUp> {
  const faults: FaultOnPaper[] = [];
  const fault = (field: FaultOnPaper['field'], message: string) => void faults.push({ field, message });
  if (written.found_on > aircraft.today) fault('found_on', said('This day has not come yet.'));
  if (!jascCode(written.jasc).known) fault('jasc', said('There is no such JASC code in the table.'));
  if (written.severity === 'limiting' && written.kind !== 'inoperative') {
    fault(
      'severity',
      said('Only equipment that does not work can be limiting. Damage is repaired or found within limits.'),
    );
  }
  if (written.severity === 'note' && written.kind !== 'cosmetic') {
    fault('severity', said('Only what is cosmetic can be a note.'));
  }
  const item = equipmentOf(written, aircraft, fault);
  const deferral = written.deferred ? deferralOf(written, aircraft, item?.id ?? null, fault) : null;
  if (faults.length > 0) return { ok: false, faults };
  return {
    ok: true,
    value: {
      foundOn: written.found_on,
      foundBy: written.found_by,
      words: written.words,
      kind: written.kind,
      jasc: written.jasc,
      equipmentId: item?.id ?? null,
      inoperativeCount: written.how_many,
      place: written.place,
      severity: written.severity === 'not-known' ? null : written.severity,
      document: written.document,
      deferral,
    },
  };
}

type Fault = (field: FaultOnPaper['field'], message: string) => void;

function equipmentOf({ equipment, how_many: count }: WrittenUp, aircraft: AircraftOfPaper, fault: Fault) {
  if (equipment === '') return null;
  const found = aircraft.equipment.filter(({ name }) => same(name, equipment));
  const [item] = found;
  if (!item) {
    fault('equipment', said('The equipment list of this aircraft has no line of this name.'));
    return null;
  }
  if (found.length > 1) {
    fault(
      'equipment',
      said('Several lines of the equipment list have this name. Give them different names first.'),
    );
    return null;
  }
  if (count !== null && count > item.installed) fault('how_many', `Only ${item.installed} installed.`);
  return item;
}

/** Words without their case and doubled spaces. */
export const same = (a: string, b: string): boolean => plain(a) === plain(b);
export const plain = (text: string): string => text.trim().toLowerCase().replace(/\s+/g, ' ');

/** What must be said of a deferral; what may stay unknown stays so, and the rules bar for it. */
function deferralOf(
  written: WrittenUp,
  aircraft: AircraftOfPaper,
  equipmentId: string | null,
  fault: Fault,
): CarriedDeferral | null {
  if (!canBeDeferredKind(written.kind)) {
    fault(
      'kind',
      said('Only equipment that does not work can be deferred (91.213). Leave the deferral out.'),
    );
  }
  if (written.severity === 'grounding' || written.severity === 'not-known') {
    fault(
      'severity',
      said('A deferral stands only on something judged limiting. Say so, or leave the deferral out.'),
    );
  }
  if (written.equipment === '') fault('equipment', said('Say which line of the equipment list is deferred.'));
  if (written.how_many === null) fault('how_many', said('Say how many do not work.'));
  const { basis, method } = written;
  if (basis === null) fault('basis', said('Write 91.213(d) or mel.'));
  if (method === null) fault('method', said('Write removed or deactivated.'));
  if (written.method_words === '') fault('method_words', said('Say how, as the paper does.'));
  if (written.placard_words === '') fault('placard_words', said('The placard’s wording is needed.'));
  if (written.placard_location === '') fault('placard_location', said('Where the placard goes is needed.'));
  // The part 43 entry that may be owed needs to know which part of the aircraft it is about.
  if (jascCode(written.jasc).known && !partOf(written.jasc).known) {
    fault('jasc', said('This code names no part of the aircraft. Choose the code of the system.'));
  }
  const recordedOn = written.recorded_on ?? written.found_on;
  const days = [
    ['recorded_on', recordedOn],
    ['determined_on', written.determined_on],
    ['elt_removed_on', written.elt_removed_on],
  ] as const;
  for (const [field, day] of days) {
    if (day !== null && day > aircraft.today) fault(field, said('This day has not come yet.'));
  }
  if (recordedOn < written.found_on) fault('recorded_on', said('This is before the day it was found.'));
  const melItem = basis === 'mel' ? melItemOf(written, aircraft, equipmentId, fault) : null;
  if (basis === null || method === null) return null;
  const determiner: DeterminerOnPaper = {
    name: written.determined_by,
    certificate: written.certificate ?? 'not-known',
    number: written.certificate_number,
    ratings: written.mechanic_ratings,
    recent: written.mechanic_recent,
    authorised: written.station_authorised,
    grade: written.pilot_grade,
    rated: written.pilot_rated,
  };
  return {
    basis,
    melItem,
    method,
    methodWords: written.method_words,
    isMaintenance: method === 'removed' || answered(written.is_maintenance) !== false,
    recordedOn,
    determinedOn: written.determined_on,
    determiner,
    judged: judgeDeterminerOnPaper(determiner, aircraft.rating, written.determined_on),
    noHazard: written.no_hazard,
    countedTogether: written.counted_together,
    record: { signed: written.record_signed, by: written.record_by, authorised: written.record_authorised },
    placard: {
      inPlace: written.placard_in_place,
      wording: written.placard_words,
      location: written.placard_location,
    },
    proceduresDone: written.procedures_done,
    eltRemovedOn: written.elt_removed_on,
    eltRecordComplete: answered(written.elt_record_complete),
  };
}

function melItemOf(
  { mel_item: title }: WrittenUp,
  aircraft: AircraftOfPaper,
  equipmentId: string | null,
  fault: Fault,
) {
  if (title === '') {
    fault('mel_item', said('Name the item of the minimum equipment list.'));
    return null;
  }
  const found = aircraft.melItems.filter((item) => same(item.title, title));
  const [item] = found;
  if (!item || found.length > 1) {
    fault('mel_item', said('The minimum equipment list in force has no one item of this title.'));
    return null;
  }
  if (equipmentId !== null && item.equipmentId !== equipmentId) {
    fault('mel_item', said('This item of the list is about other equipment.'));
    return null;
  }
  return { id: item.id, title: item.title };
}
