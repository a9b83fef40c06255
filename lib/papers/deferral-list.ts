import { CAUTION, type PaperFrame } from './paper';
import { closeSheet, heading, labelled, openSheet, paragraph, rule, title } from './sheet';
import { certificateSaid, daySaid, hoursSaid, momentSaid } from './words';

export interface CarriedDeferral {
  readonly number: string;
  readonly title: string;
  readonly placards: readonly {
    readonly wording: string;
    readonly location: string;
    readonly placed: boolean;
  }[];
  /** "14 CFR 91.213(d)" or the list and its item. */
  readonly basis: string;
  readonly how: string;
  /** Kinds of flight that this item bars, in words; null: every one of the eight is open. */
  readonly barred: string | null;
  /** What a flight has to keep to, with its paragraph. */
  readonly limits: readonly string[];
  readonly recordedOn: string;
  readonly ends: readonly string[];
  readonly signedBy: string;
  readonly certificateKind: string;
  readonly certificateNumber: string;
  /** Null: carried over from paper, which does not say. */
  readonly signedOn: string | null;
  /** It stood on paper before: who vouches for that, in a sentence; else null. */
  readonly carriedOver: string | null;
}

export interface CarriedWatch {
  readonly number: string;
  readonly title: string;
  readonly measured: string;
  readonly limit: string;
  readonly source: string;
  readonly signedBy: string;
  readonly certificateKind: string;
  readonly certificateNumber: string;
  readonly signedOn: string;
}

/** What is deferred and what is watched on one aircraft, to carry aboard. */
export interface DeferralListPaper extends PaperFrame {
  readonly fileName: string;
  readonly ttisTenths: number | null;
  readonly deferrals: readonly CarriedDeferral[];
  readonly watches: readonly CarriedWatch[];
  /** Open write-ups that are neither deferred nor found within limits. */
  readonly other: readonly { readonly number: string; readonly title: string; readonly standing: string }[];
}

/** Draws it. */
export function deferralList(view: DeferralListPaper): Promise<Uint8Array> {
  const { aircraft } = view;
  const asOf = momentSaid(view.madeAt, aircraft.zone);
  const sheet = openSheet({
    title: `${aircraft.registration}: deferred items`,
    subject: 'Deferred and watched items, to carry aboard',
    madeAt: view.madeAt,
  });
  title(sheet, `${aircraft.registration}: deferred items`);
  labelled(sheet, 'Aircraft', `${aircraft.registration}, serial ${aircraft.serial}, ${aircraft.typeName}`);
  labelled(sheet, 'As of', asOf);
  labelled(sheet, 'Total time in service', hoursSaid(view.ttisTenths));
  paragraph(sheet, `It says what stood at ${asOf}. Print it anew when anything has changed.`);
  paragraph(sheet, CAUTION, { bold: true });
  if (view.other.length > 0) {
    heading(sheet, 'Written up, neither deferred nor within limits');
    for (const one of view.other) labelled(sheet, one.number, `${one.title}. ${one.standing}`);
  }
  heading(sheet, `Deferred: ${view.deferrals.length}`);
  if (view.deferrals.length === 0) paragraph(sheet, 'Nothing is deferred.');
  for (const one of view.deferrals) {
    heading(sheet, `${one.number}: ${one.title}`);
    for (const { wording, location, placed } of one.placards) {
      labelled(
        sheet,
        'Placard',
        `${wording}\n${location}${placed ? '' : '\nNOT IN PLACE when this was printed'}`,
      );
    }
    if (one.placards.length === 0) labelled(sheet, 'Placard', 'none on record');
    labelled(sheet, 'Basis', one.basis);
    labelled(sheet, 'How', one.how);
    labelled(sheet, 'Bars', one.barred ?? 'no kind of flight by itself');
    if (one.limits.length > 0) labelled(sheet, 'Limits', one.limits.join('\n'));
    labelled(sheet, 'Recorded on', daySaid(one.recordedOn));
    labelled(sheet, 'Ends', one.ends.join('\n'));
    labelled(sheet, one.carriedOver === null ? 'Signed by' : 'Determined by', signedSaid(one));
    if (one.carriedOver !== null) labelled(sheet, 'Carried over', one.carriedOver);
  }
  heading(sheet, `Within limits, watched: ${view.watches.length}`);
  if (view.watches.length === 0) paragraph(sheet, 'Nothing is watched.');
  for (const one of view.watches) {
    heading(sheet, `${one.number}: ${one.title}`);
    labelled(sheet, 'Measured', one.measured);
    labelled(sheet, 'Limit', `${one.limit}\nSource: ${one.source}`);
    labelled(sheet, 'Signed by', signedSaid(one));
  }
  rule(sheet);
  return closeSheet(sheet, `Wheelchock, ${aircraft.registration}, as of ${asOf}`);
}

const signedSaid = (
  one: Pick<CarriedDeferral, 'signedBy' | 'certificateKind' | 'certificateNumber' | 'signedOn'>,
) =>
  `${one.signedBy}, ${certificateSaid(one.certificateKind)}, number ${one.certificateNumber}, ${one.signedOn === null ? 'day not known' : daySaid(one.signedOn)}`;
