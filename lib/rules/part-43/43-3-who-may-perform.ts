import type { SignerFacts } from '../people';
import { barsForMissing, type Line } from '../verdict';
import type { WorkToSign } from '../work-to-sign';
import { preventiveItem, whyItemDoesNotFit } from './43-appendix-a-preventive-maintenance';

/**
 * 14 CFR 43.3: who may perform maintenance.
 * (b), (c) A mechanic or repairman as part 65 allows (see part-65).
 * (d) A helper without certificate under a mechanic who watches as needed and can be asked in person; never a required
 *     inspection and never an inspection after a major repair.
 * (e) A repair station as its certificate allows.
 * (g) A pilot holding a certificate of part 61 may do preventive maintenance on an aircraft that pilot owns or operates,
 *     not one used under parts 121, 129 or 135. Sport pilots only on light-sport category aircraft.
 * (j) The manufacturer: not coded, a manufacturer's signature comes as a repair station's here.
 * (k) A database update from the flight deck, without tools or taking apart, is no maintenance: not coded, no signature.
 * Read in an eCFR copy of 3 September 2026.
 */

/** (d) What a helper under supervision may not do. Null when the paragraph lets the work be supervised. */
export function helperBarred43_3d(work: WorkToSign): Line | null {
  if (work.kind !== 'annual' && work.kind !== 'hundred-hour') return null;
  return {
    effect: 'bars',
    cite: '14cfr43.3(d)',
    because: 'A required inspection must be done by the certificated person, not by a supervised helper.',
  };
}

/** How somebody who is not the signer could do the work: (d) watched by the signer, or certificated for it. */
export type WorkerStanding = 'supervised' | 'certificated';

/** (a), (d) The signer's word on whoever did the work. Null: not said, and that bars. */
export function workerStanding43_3(standing: WorkerStanding | null): Line {
  switch (standing) {
    case null:
      return barsForMissing(
        '14cfr43.3(d)',
        'whether you supervised whoever did the work, or they are certificated for it',
      );
    case 'supervised':
      return {
        effect: 'supports',
        cite: '14cfr43.3(d)',
        because: 'The signer watched the work as far as needed and was at hand in person.',
      };
    case 'certificated':
      return {
        effect: 'supports',
        cite: '14cfr43.3(a)',
        because: 'Whoever did the work holds a certificate that allows it, by the signer’s word.',
      };
  }
}

/** (g) Preventive maintenance by the pilot who owns or operates the aircraft. Every reason against is given. */
export function pilotPerforms43_3g(signer: SignerFacts, work: WorkToSign): readonly Line[] {
  const lines: Line[] = [];
  if (work.kind !== 'preventive') {
    lines.push({
      effect: 'bars',
      cite: '14cfr43.3(g)',
      because: 'A pilot may do preventive maintenance and nothing else on the aircraft.',
    });
    return lines;
  }
  const item = preventiveItem(work.preventiveItem);
  if (!item.known) {
    lines.push({
      effect: 'bars',
      cite: '14cfr43appA(c)',
      because: `Not known: ${item.missing}. What is not on the list is not preventive maintenance.`,
      missing: item.missing,
    });
  } else {
    const misfit = whyItemDoesNotFit(item.value, work);
    if (misfit) lines.push({ effect: 'bars', cite: item.value.cite, because: misfit });
    else
      lines.push({
        effect: 'supports',
        cite: item.value.cite,
        because: `On the list of preventive maintenance: ${item.value.task}.`,
      });
  }
  if (!signer.namedForPreventiveMaintenance) {
    lines.push({
      effect: 'bars',
      cite: '14cfr43.3(g)',
      because:
        'Only the pilot who owns or operates the aircraft may do this. The operator has not named you in writing for it.',
      strictReading:
        'A renter or an employed instructor is not plainly an operator, so we ask for the operator’s written naming.',
    });
  }
  if (!work.performedBySigner) {
    lines.push({
      effect: 'bars',
      cite: '14cfr43.3(g)',
      because: 'A pilot may approve only preventive maintenance done with their own hands.',
    });
  }
  return lines;
}
