import { command } from '../access/service';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import {
  bearingsApart,
  checkBearingErrors,
  parseDegrees,
  type VorMethod,
} from '../rules/part-91/91-171-bearing-errors';
import { requireRequirement } from './requirement';
import { recordVorCheckInput } from './requirement-schema';
import { keepCompliance } from './write-compliance';
import { filled, said } from '../words/said';

/**
 * The VOR check of 91.171, recorded by whoever made it: date, place, bearing error, signature (d). No certificate number is
 * asked. An error over the limit is refused with its paragraph: that receiver is written up, not recorded as checked.
 */
export const recordVorCheck = command({
  verb: 'vor-check.record',
  input: recordVorCheckInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const requirement = await requireRequirement(tx, operatorId, input.requirementId);
    const { aircraft } = requirement;
    if (requirement.kind !== 'vor-check') {
      throw new Refusal('conflict', {
        say: filled(said('{name} is not a VOR check.'), { name: requirement.name }),
      });
    }
    const zone = aircraft.base.zone;
    if (input.checkedOn > dayAtBase(now, zone))
      throw fieldRefusal('checkedOn', said('This day has not come yet.'));
    const { errors, bearings } = readErrors(input.method, input.first, input.second);
    const lines = checkBearingErrors(input.method, errors);
    if (lines.some((line) => line.effect === 'bars')) {
      throw new Refusal('signature_refused', {
        say: said(
          'Out of limits: this is no check to record. Report it as a finding, so that a mechanic looks at it.',
        ),
        lines: linesOf(lines),
      });
    }
    // Hours are kept with every record; the check itself is by the calendar.
    const ttisTenths = aircraft.ttisTenths;
    if (ttisTenths === null) {
      throw new Refusal('conflict', {
        say: filled(said('The total time in service of {registration} is not known yet.'), {
          registration: aircraft.registration,
        }),
      });
    }
    const details = {
      method: input.method,
      place: input.place,
      errorTenths: errors,
      bearingTenths: bearings,
    };
    const signature = signatureOver(
      {
        what: 'vor-check',
        aircraft: aircraft.registration,
        doneOn: input.checkedOn,
        ttisTenths,
        details,
        approvedBy: actor.name,
        approvedByAuthorised: true,
        by: actor.name,
        at: now.toISOString(),
      },
      now,
      zone,
    );
    const id = await keepCompliance(
      context,
      requirement.id,
      {
        doneOn: input.checkedOn,
        ttisTenths,
        details,
        // 91.171 asks for no authorization: whoever makes the check may.
        approvedByAuthorised: true,
        approvedBy: actor.name,
      },
      signature,
    );
    await factsChanged(tx, operatorId, aircraft.id);
    return {
      value: { complianceId: id, hash: signature.hash },
      audit: {
        subjectKind: 'requirement',
        subjectId: requirement.id,
        detail: {
          aircraft: aircraft.registration,
          checkedOn: input.checkedOn,
          ...details,
          hash: signature.hash,
        },
      },
    };
  },
});

const FULL_CIRCLE = 3600;

/** Errors in tenths of a degree: as read, or for two receivers how far their bearings lie apart. */
function readErrors(
  method: VorMethod,
  first: string,
  second: string,
): { readonly errors: readonly number[]; readonly bearings: readonly number[] | null } {
  const one = parseDegrees(first);
  if (one === null) throw fieldRefusal('first', said('Degrees, whole or half: 2, -1.5.'));
  const other = second.trim() === '' ? null : parseDegrees(second);
  if (method !== 'dual') return { errors: other === null ? [one] : [one, other], bearings: null };
  if (other === null) throw fieldRefusal('second', said('Both bearings are needed to compare them.'));
  for (const [field, bearing] of [
    ['first', one],
    ['second', other],
  ] as const) {
    if (bearing < 0 || bearing > FULL_CIRCLE)
      throw fieldRefusal(field, said('A bearing is from 0 to 360 degrees.'));
  }
  return { errors: [bearingsApart(one, other)], bearings: [one, other] };
}
