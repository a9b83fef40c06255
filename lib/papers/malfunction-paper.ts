import type { MalfunctionFacts } from './malfunction-facts';
import { closeSheet, heading, labelled, openSheet, paragraph, rule, title } from './sheet';
import { daySaid } from './words';

/** The facts on plain paper. Not the look of any form. */
export function malfunctionPaper({ facts }: { readonly facts: MalfunctionFacts }): Promise<Uint8Array> {
  const { aircraft, engine, propeller, system, part } = facts;
  const sheet = openSheet({
    title: `${aircraft.registration} ${facts.writeUp}: facts of a malfunction or defect`,
    subject: 'Facts for a malfunction or defect report; this is no form and was sent nowhere',
    madeAt: facts.madeAt,
  });
  title(sheet, `${facts.writeUp}: facts of a malfunction or defect`);
  paragraph(
    sheet,
    'Facts from the records, for whoever writes a report. This is no form of any authority and was sent nowhere. What nobody has stated is said to be so.',
  );
  heading(sheet, 'Aircraft');
  labelled(sheet, 'Registration', aircraft.registration);
  labelled(sheet, 'Type', aircraft.type);
  labelled(sheet, 'Serial', aircraft.serial);
  labelled(sheet, 'Total time in service', hours(aircraft.totalTimeHours));
  labelled(sheet, 'Engine', engine && [engine.type, engine.serial].filter(Boolean).join(', serial '));
  labelled(
    sheet,
    'Propeller',
    propeller && [propeller.type, propeller.serial].filter(Boolean).join(', serial '),
  );
  heading(sheet, 'Part');
  labelled(sheet, 'System', system && `JASC ${system.code} ${system.title}`);
  labelled(sheet, 'Part name', part.name);
  labelled(sheet, 'Part number', part.number);
  labelled(sheet, 'Part serial', part.serial);
  labelled(sheet, 'Condition', part.condition);
  labelled(sheet, 'Location', part.location);
  labelled(sheet, 'Part total time', hours(part.totalTimeHours));
  labelled(sheet, 'Part since overhaul', hours(part.timeSinceOverhaulHours));
  heading(sheet, 'What happened');
  labelled(sheet, 'Found on', daySaid(facts.foundOn));
  labelled(sheet, 'Found', facts.foundDuring);
  labelled(sheet, 'Description', facts.description);
  labelled(sheet, 'What was done', facts.done.join('\n'));
  rule(sheet);
  labelled(sheet, 'Submitted by', `${facts.submitter.name}, ${facts.submitter.organisation}`);
  labelled(sheet, 'Not stated', facts.notStated.join(', ') || 'nothing: every fact is there');
  return closeSheet(sheet, `Wheelchock, ${facts.writeUp}, ${facts.schema}`);
}

const hours = (text: string | null): string | null => (text === null ? null : `${text} h`);
