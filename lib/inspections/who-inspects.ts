import type { AircraftTypeFacts } from '../rules/aircraft';
import type { CalendarDate } from '../rules/facts';
import {
  INSPECTION_PARTS,
  type InspectionKind,
  type InspectionPart,
} from '../rules/part-43/43-11-inspection-entry';
import type { SignerFacts } from '../rules/people';
import { mayApproveReturnToService, type SigningRuling, type WorkToSign } from '../rules/who-may-sign';
import type { InspectionRow } from './inspection';

/** The inspection of one part as the law of signatures sees it. */
export const partToSign = (
  inspection: InspectionRow,
  part: InspectionPart,
  madeBySigner: boolean,
): WorkToSign => ({
  part,
  kind: inspection.kind as InspectionKind,
  preventiveItem: null,
  swapOnly: false,
  aircraftCategory: inspection.aircraft.type.category as AircraftTypeFacts['category'],
  performedBySigner: madeBySigner,
});

/** Whether a person may approve or disapprove after the inspection of one part. */
export const mayInspect = (
  signer: SignerFacts,
  inspection: InspectionRow,
  part: InspectionPart,
  madeBySigner: boolean,
  on: CalendarDate,
): SigningRuling => mayApproveReturnToService(signer, partToSign(inspection, part, madeBySigner), on);

/**
 * Who signs the list of 43.11(b): "the person performing the inspection", so whoever may sign for a part of it. The
 * first ruling that allows; else that about the airframe, with its reasons.
 */
export function mayGiveList(signer: SignerFacts, inspection: InspectionRow, on: CalendarDate): SigningRuling {
  const [airframe, ...others] = INSPECTION_PARTS.map((part) =>
    mayInspect(signer, inspection, part, true, on),
  );
  return [airframe, ...others].find((ruling) => ruling?.allowed) ?? (airframe as SigningRuling);
}
