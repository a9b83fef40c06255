/**
 * 14 CFR 91.213(a) and (b): takeoff with an inoperative item under a minimum equipment list. All of:
 *
 * (a)(1) An approved minimum equipment list exists for this aircraft.
 * (a)(2) The letter of authorization is aboard; list and letter are then a supplemental type certificate.
 * (a)(3) The list (i) keeps within (b) and (ii) provides for flight with the item inoperative.
 * (a)(4) The aircraft records that the pilot can see describe the inoperative item.
 * (a)(5) The aircraft is operated under every condition and limit of the list and the letter, its operating (O) and
 *   maintenance (M) procedures included.
 * (b) Never in a list: (1) items the type's airworthiness rules require and that are essential under all conditions;
 *   (2) items a directive requires operable, unless it says otherwise; (3) items part 91 requires for the specific
 *   operation. Not coded: (b)(1), which the approval of the list answers. From memory, no copy of (b) was read.
 *
 * While a list and its letter are in force only the list counts and (d) is closed (AC 91-67A, from memory). Repair
 * categories are in `../advisory/mmel-repair-categories.ts`, their extension in `../advisory/mmel-extension.ts`.
 */
import type { AircraftFacts, DeferralFacts, MelFacts, MelItemFacts } from '../aircraft';
import { standingDeadline } from '../advisory/mmel-extension';
import { repairCategoryCite } from '../advisory/mmel-repair-categories';
import { dayInWords } from '../in-words';
import type { UseOfAircraft } from '../operations';
import { lastDayOf } from '../requirement-lines';
import { barsForMissing, type Line, type Subject } from '../verdict';
import { aboutDiscrepancy, remainingOfItem, type InoperativeItem } from './91-213-item';
import { requiredByDirective, requiredByPart91 } from './91-213-d-without-mel';

/** Which way 91.213 leaves open for the aircraft, with the lines that say so. */
export type MelStanding =
  | { readonly path: 'mel'; readonly mel: MelFacts; readonly lines: readonly Line[] }
  | { readonly path: 'paragraph-d'; readonly lines: readonly Line[] }
  | { readonly path: 'closed'; readonly lines: readonly Line[] };

/** (a)(1), (a)(2): is a list in force? Unknown closes both ways, and so does a list without its letter aboard. */
export function melStanding({ mel }: AircraftFacts, about: Subject): MelStanding {
  if (!mel.known) {
    return { path: 'closed', lines: [barsForMissing('14cfr91.213(a)(1)', mel.missing, about)] };
  }
  if (mel.value === null) {
    const because = 'The aircraft has no approved minimum equipment list, so paragraph (d) is the way.';
    return {
      path: 'paragraph-d',
      lines: [{ effect: 'supports', cite: '14cfr91.213(a)(1)', because, about }],
    };
  }
  const { letterAboard, reference } = mel.value;
  const cite = '14cfr91.213(a)(2)';
  if (!letterAboard.known)
    return { path: 'closed', lines: [barsForMissing(cite, letterAboard.missing, about)] };
  if (!letterAboard.value) {
    const because = `Minimum equipment list ${reference}: its letter of authorization is not aboard.`;
    const strictReading =
      'A list is approved and its letter is missing; we do not read that as leave to use paragraph (d) instead.';
    return { path: 'closed', lines: [{ effect: 'bars', cite, because, about, strictReading }] };
  }
  const because = `Minimum equipment list ${reference} and its letter are aboard: only the list counts, paragraph (d) is closed.`;
  return { path: 'mel', mel: mel.value, lines: [{ effect: 'supports', cite, because, about }] };
}

/** (a)(3)(ii): the entry of the list for the item; the one the deferral names, or the only one there is. */
export function melItemFor(
  mel: MelFacts,
  { discrepancy, item }: InoperativeItem,
):
  | { readonly ok: true; readonly entry: MelItemFacts }
  | { readonly ok: false; readonly lines: readonly Line[] } {
  const about = aboutDiscrepancy(discrepancy);
  const cite = '14cfr91.213(a)(3)(ii)';
  const entries = mel.items.filter((candidate) => candidate.equipmentId === item.id);
  const named = discrepancy.deferral?.melItemId ?? null;
  if (entries.length === 0) {
    const because = `${item.name}: not in minimum equipment list ${mel.reference}, so it must work.`;
    return { ok: false, lines: [{ effect: 'bars', cite, because, about }] };
  }
  const [first, ...more] = named === null ? entries : entries.filter((candidate) => candidate.id === named);
  if (first === undefined || more.length > 0) {
    const missing = `which entry of minimum equipment list ${mel.reference} covers ${item.name}`;
    return { ok: false, lines: [barsForMissing(cite, missing, about)] };
  }
  return { ok: true, entry: first };
}

/** (a)(3), (a)(5) and (b) for one use: the list alone decides, and it cannot allow what (b) keeps out of it. */
export function judgeWithMel(
  mel: MelFacts,
  inoperative: InoperativeItem,
  use: UseOfAircraft,
): readonly Line[] {
  const found = melItemFor(mel, inoperative);
  if (!found.ok) return found.lines;
  return [
    ...melCounts(found.entry, inoperative),
    ...melKinds(found.entry, use, aboutDiscrepancy(inoperative.discrepancy)),
    ...melConditions(found.entry, aboutDiscrepancy(inoperative.discrepancy)),
    ...neverInAList(inoperative, use),
  ];
}

/** (a)(3)(ii): enough still work for the number the entry requires for dispatch. */
function melCounts(entry: MelItemFacts, inoperative: InoperativeItem): readonly Line[] {
  const cite = '14cfr91.213(a)(3)(ii)';
  const about = aboutDiscrepancy(inoperative.discrepancy);
  const { item } = inoperative;
  if (entry.installed !== item.installed) {
    const because = `${entry.title}: the list is written for ${entry.installed} installed, this aircraft has ${item.installed}.`;
    return [{ effect: 'bars', cite, because, about }];
  }
  const remaining = remainingOfItem(inoperative);
  if (!remaining.known) return [barsForMissing(cite, remaining.missing, about)];
  const because = `${entry.title}: the list requires ${entry.requiredForDispatch} of ${entry.installed} for dispatch, ${remaining.value} would work.`;
  const effect = remaining.value < entry.requiredForDispatch ? 'bars' : 'supports';
  return [{ effect, cite, because, about }];
}

/** (a)(5): the kinds of operation that the entry allows. */
function melKinds(entry: MelItemFacts, use: UseOfAircraft, about: Subject): readonly Line[] {
  const bar = (kind: string): Line => ({
    effect: 'bars',
    cite: '14cfr91.213(a)(5)',
    because: `${entry.title}: the list does not allow this ${kind}.`,
    about,
  });
  const lines: Line[] = [];
  if (use.light === 'night' && !entry.allowed.night) lines.push(bar('at night'));
  if (use.rules === 'IFR' && !entry.allowed.ifr) lines.push(bar('under IFR'));
  if (use.hire && !entry.allowed.hire) lines.push(bar('for hire'));
  return lines;
}

/** (a)(5): the provisos and the operating procedure, which bind the flight. */
function melConditions(entry: MelItemFacts, about: Subject): readonly Line[] {
  const limit = (because: string): Line => ({ effect: 'limits', cite: '14cfr91.213(a)(5)', because, about });
  const lines: Line[] = [];
  if (entry.proviso.trim() !== '') lines.push(limit(`${entry.title}, proviso: ${entry.proviso}`));
  if (entry.operatingProcedure !== null) {
    lines.push(limit(`${entry.title}, operating procedure (O): ${entry.operatingProcedure}`));
  }
  return lines;
}

/** (b)(2), (b)(3): what a list cannot allow whatever it says. Only what bars is told. */
function neverInAList(inoperative: InoperativeItem, use: UseOfAircraft): readonly Line[] {
  const outside = [...requiredByPart91(inoperative, use), ...requiredByDirective(inoperative)];
  return outside
    .filter((line) => line.effect === 'bars' || line.effect === 'limits')
    .map((line) => ({
      ...line,
      cite: line.cite === '14cfr91.213(d)(2)(iv)' ? '14cfr91.213(b)(2)' : line.cite,
      strictReading:
        line.strictReading ??
        'We hold a list to 91.213(b): it cannot allow what a directive or part 91 requires for this operation.',
    }));
}

/**
 * The repair interval of the entry, as a limit while it runs and a bar once it is over. The flight must be on the
 * ground before the midnight that ends the last day. Only a note where the operator is not bound by intervals.
 */
export function repairInterval(
  mel: MelFacts,
  entry: MelItemFacts,
  deferral: DeferralFacts,
  use: UseOfAircraft,
  about: Subject,
): readonly Line[] {
  const cite = repairCategoryCite(entry.category);
  const { lastDay: deadline, extended } = standingDeadline(mel, entry, deferral);
  if (!mel.enforceCategories) {
    const until = deadline.known
      ? `would end with ${dayInWords(deadline.value)}`
      : `is not known: ${deadline.missing}`;
    const because = `Repair category ${entry.category}: the interval ${until}. This operator is not held to intervals.`;
    return [{ effect: 'notes', cite, because, about }];
  }
  if (!deadline.known) return [barsForMissing(cite, deadline.missing, about)];
  const last = deadline.value;
  const lastInWords = dayInWords(last);
  const recorded = `Repair category ${entry.category}, recorded ${dayInWords(deferral.recordedOn)}${extended ? ', extended once' : ''}`;
  return lastDayOf(use) > last
    ? [{ effect: 'bars', cite, because: `${recorded}: the interval ended with ${lastInWords}.`, about }]
    : [
        {
          effect: 'limits',
          cite,
          because: `${recorded}: to be repaired by the end of ${lastInWords}.`,
          about,
        },
      ];
}
