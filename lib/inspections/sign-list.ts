import { randomUUID } from 'node:crypto';
import { command } from '../access/service';
import { dateColumn } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { factsChanged } from '../fleet/require-aircraft';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import type { DiscrepancyFacts } from '../rules/aircraft';
import { standingAtInspection } from '../rules/part-43/43-11-inspection-entry';
import {
  itemsOf,
  listInForce,
  requireOpenInspection,
  type InspectionRow,
  type SignedItem,
} from './inspection';
import { openAtInspection, openHash } from './open-at-inspection';
import { listInput } from './schema';
import { mayGiveList } from './who-inspects';
import { filled, said } from '../words/said';

/** What the signer of a list declares; kept with it. */
export const LIST_STATEMENT =
  'Discrepancies and unairworthy items found at this inspection, and inoperative items that stay deferred and placarded. Given to the owner or operator (14 CFR 43.11(b)).';

/**
 * The signed, dated list of 43.11(b). The inspector says of every open write-up whether it makes the aircraft unairworthy;
 * live deferrals are added with their placards. Signed again, a new list takes the place of the one before; once a part is
 * signed, only by keeping what it names as unairworthy. Refuses when what stands open changed since it was shown.
 */
export const signList = command({
  verb: 'inspection.list',
  input: listInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now } = context;
    const inspection = await requireOpenInspection(tx, operatorId, input.inspectionId);
    const { open, placards } = await openAtInspection(context, inspection.aircraftId);
    if (openHash({ open, placards }) !== input.seen) {
      throw new Refusal('superseded', {
        say: said('What stands open, or a placard, changed after you read it. Read it again, then sign.'),
      });
    }
    const { base, registration, serial } = inspection.aircraft;
    const on = dayAtBase(now, base.zone);
    const signer = signerFacts(await readSigner(tx, operatorId, actor.personId));
    const ruling = mayGiveList(signer, inspection, on);
    if (!ruling.allowed || !ruling.under) {
      throw new Refusal('signature_refused', {
        say: said('The list is signed by whoever makes the inspection. Your certificates do not reach it.'),
        lines: linesOf(ruling.lines),
      });
    }
    const items = itemsFor(
      open,
      placards,
      new Map(input.standings.map((one) => [one.discrepancyId, one.unairworthy])),
    );
    if (items.length === 0) {
      throw new Refusal('conflict', {
        say: said('There is nothing to list. Write up first what was found.'),
      });
    }
    refuseUnlisting(inspection, open, items);
    const { capacity, certificate } = ruling.under;
    const earlier = listInForce(inspection);
    const content = {
      what: 'discrepancy-list',
      aircraft: registration,
      serial,
      inspectionId: inspection.id,
      kind: inspection.kind,
      dated: on,
      statement: LIST_STATEMENT,
      items,
      supersedesId: earlier?.id ?? null,
      signer: { name: actor.name, capacity, certificate },
      at: now.toISOString(),
    };
    const signature = signatureOver(content, now, base.zone);
    const id = randomUUID();
    await tx.discrepancyList.create({
      data: {
        id,
        operatorId,
        inspectionId: inspection.id,
        dated: dateColumn(on),
        items: items as object,
        personId: actor.personId,
        personName: actor.name,
        certificateKind: certificate.kind,
        certificateNumber: certificate.number,
        supersedesId: earlier?.id ?? null,
        ...signature,
      },
    });
    await factsChanged(tx, operatorId, inspection.aircraftId);
    return {
      value: { listId: id, hash: signature.hash },
      audit: {
        subjectKind: 'inspection',
        subjectId: inspection.id,
        detail: { aircraft: registration, items: items.map(({ number }) => number), hash: signature.hash },
      },
    };
  },
});

/**
 * A signed part names the list as it was given: what it says is unairworthy stays so on every later one, unless its
 * write-up is closed by then.
 */
function refuseUnlisting(
  inspection: InspectionRow,
  open: readonly DiscrepancyFacts[],
  items: readonly SignedItem[],
): void {
  if (inspection.work.every(({ signOff }) => !signOff)) return;
  const stillOpen = new Set(open.map(({ id }) => id));
  const listed = new Set(unairworthyIn(items));
  const dropped = itemsOf(listInForce(inspection)).filter(
    ({ standing, discrepancyId }) =>
      standing === 'unairworthy' && stillOpen.has(discrepancyId) && !listed.has(discrepancyId),
  );
  if (dropped.length === 0) return;
  const numbers = dropped.map(({ number }) => number).join(', ');
  throw new Refusal('conflict', {
    say: filled(
      said(
        'A part is signed over the list that names {numbers} as unairworthy (14 CFR 43.11(b)). It stays listed until it is repaired and signed.',
      ),
      { numbers },
    ),
  });
}

const unairworthyIn = (items: readonly SignedItem[]): readonly string[] =>
  items.flatMap(({ standing, discrepancyId }) => (standing === 'unairworthy' ? [discrepancyId] : []));

/** Items in the order of the write-ups. Refuses a write-up nobody has answered for, and a deferral without its placard. */
function itemsFor(
  open: readonly DiscrepancyFacts[],
  placards: ReadonlyMap<string, string>,
  answers: ReadonlyMap<string, boolean>,
): readonly SignedItem[] {
  return open.flatMap((d): SignedItem[] => {
    const item = { discrepancyId: d.id, number: d.number, title: d.title };
    const standing = standingAtInspection(d);
    if (standing === 'deferred') {
      const placard = placards.get(d.id);
      if (!d.deferral?.placardPlaced || placard === undefined) {
        throw new Refusal('signature_refused', {
          say: filled(said('{number} is deferred and its placard is not in place.'), { number: d.number }),
          lines: [
            {
              cite: '14cfr43.11(b)',
              because: 'Items left inoperative are placarded by the inspector, then added to the list.',
            },
          ],
        });
      }
      return [{ ...item, standing: 'inoperative-placarded', placard }];
    }
    const unairworthy = answers.get(d.id);
    if (unairworthy === undefined) {
      throw fieldRefusal(
        `standings.${d.id}`,
        filled(said('Say of {number} whether it makes the aircraft unairworthy.'), { number: d.number }),
      );
    }
    if (!unairworthy && standing === 'repair-owed') {
      throw fieldRefusal(
        `standings.${d.id}`,
        filled(
          said(
            '{number} is neither repaired, deferred nor found within limits. List it, or settle it first.',
          ),
          { number: d.number },
        ),
      );
    }
    return unairworthy ? [{ ...item, standing: 'unairworthy', placard: null }] : [];
  });
}
