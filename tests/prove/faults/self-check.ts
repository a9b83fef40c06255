/** The check itself: damage done by hand behind the application's back has to be found, or its zeros say nothing. Comes last. */
import { withClient } from '@/lib/operate/connection';
import { nickedPropeller } from '../../fixtures/acts';
import type { Row } from '../row';
import { checkAll, type Faulty } from './check';
import { COMMAND } from './tally';
import type { Yard } from './yard';

export async function selfCheck(yard: Yard): Promise<Row[]> {
  const { load, site, apps } = yard;
  const [app] = apps;
  if (!app) throw new Error('No application runs.');
  const ledger = await yard.newcomer('CHECK');
  load.set('open');
  const found = { ...nickedPropeller(ledger.school), foundAt: new Date().toISOString() };
  await load.send({ act: 'reportFinding', ref: ledger.school.people.renter, input: found }, ledger);
  const begun = () => load.acked.find(({ call }) => call.act === 'startWork');
  while (!begun()) await yard.busyFor(200);
  await load.settle();
  const ledgers = [...yard.ledgers, ledger];
  const before = numbers(await checkAll(site, app, load.acked, ledgers));
  const other = begun()?.call.input['requestId'];
  await withClient(site.adminUrl, async (client) => {
    // Past every trigger and constraint between rows, as whoever has the disk could.
    await client.query('SET session_replication_role = replica');
    await client.query('DELETE FROM request WHERE id = $1', [other]);
    await client.query(
      `INSERT INTO audit_row SELECT (jsonb_populate_record(a, jsonb_build_object('seq', 1000000))).* FROM audit_row a
         WHERE request_id = $1 AND verb = 'finding.report'`,
      [found.requestId],
    );
    await client.query(
      `UPDATE discrepancy SET state = 'closed', closed_at = opened_at, closed_how = 'repaired' WHERE finding_id = $1`,
      [found.requestId],
    );
  });
  const after = numbers(await checkAll(site, app, load.acked, ledgers));
  const seen = (['lost', 'doubled', 'chain', 'wrongGo'] as const).filter(
    (kind) => before[kind] === 0 && after[kind] > 0,
  );
  return [
    {
      part: 'faults',
      what: 'the check of all this finds a lost write, a doubled one, a broken chain and a wrong go made by hand',
      command: COMMAND,
      measured: `found: ${seen.join(', ') || 'none'}; before the damage ${JSON.stringify(before)}, after it ${JSON.stringify(after)}`,
      wanted: 'found: lost, doubled, chain, wrongGo; before the damage nothing',
      good: seen.length === 4,
    },
  ];
}

const numbers = (found: Faulty): Record<keyof Faulty, number> => ({
  lost: found.lost.length,
  doubled: found.doubled.length,
  chain: found.chain.length,
  wrongGo: found.wrongGo.length,
  otherAnswer: found.otherAnswer.length,
});
