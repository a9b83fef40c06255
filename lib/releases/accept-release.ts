import { command, type Context } from '../access/service';
import { instant } from '../db/dates';
import { linesOf } from '../determinations/write-up';
import { readSigner, signerFacts } from '../people/signer';
import { fieldRefusal, Refusal } from '../problems';
import { dayAtBase, signatureOver } from '../records/signature';
import type { ProposedFlight } from '../rules/operations';
import { whyNotAccepted } from '../rules/release-state';
import { expiredBars, leftBars } from '../rules/who-may-sign';
import { acceptReleaseInput } from './flight-schema';
import { answerHashOf, historyOf, limitsNow, requireReleaseRow } from './history';
import { factsNow, recallNow } from './recall-releases';
import { said } from '../words/said';

/** What the pilot in command signs. Sources: 14 CFR 91.3(a), 91.7(b), 91.103. */
export const ACCEPTANCE_STATEMENT =
  'I have read the answer for this flight and its limits, and take the aircraft as its pilot in command (14 CFR 91.3(a)). ' +
  'Before the flight I make myself familiar with all available information (14 CFR 91.103) and determine whether the ' +
  'aircraft is in condition for safe flight; I discontinue the flight when it is not airworthy (14 CFR 91.7(b)).';

export interface Accepted {
  readonly releaseId: string;
  readonly acceptanceId: string;
  /** ISO instant. */
  readonly acceptedAt: string;
}

/**
 * The pilot in command of a release takes the aircraft, with a signature over the release's hash and its limits. Nobody
 * else can, and again after a warning. It is judged once more, as a recall does: refuses `no_go` with the lines when it would
 * be void, `superseded` when something limits that nobody has told them of; `conflict` when it is not what they looked at,
 * or when it is void, withdrawn, departed or past.
 */
export const acceptRelease = command({
  verb: 'flight.accept',
  input: acceptReleaseInput,
  signing: true,
  auditRefusals: true,
  async run(context, input) {
    const { tx, operatorId, actor, now, requestId } = context;
    const row = await requireReleaseRow(tx, operatorId, input.releaseId);
    if (row.pilotId !== actor.personId) {
      throw new Refusal('not_allowed', { say: said('A release is accepted by its pilot in command alone.') });
    }
    const why = whyNotAccepted(historyOf(row), instant(row.arriveAt), instant(now));
    if (why !== null) throw new Refusal('conflict', { say: why });
    if (input.answerHash !== answerHashOf(row)) {
      throw new Refusal('conflict', {
        say: said(
          'The facts changed since you looked. Load the page again and read the answer before you sign.',
        ),
      });
    }
    await judgeAgain(context, row);
    const limits = limitsNow(row);
    if (limits.length > 0 && !input.limitsRead) {
      throw fieldRefusal('limitsRead', said('Read the limits, then confirm it here.'));
    }
    const { zone } = row.aircraft.base;
    const certificate = await pilotCertificate(context, zone);
    const flight = row.flight as unknown as ProposedFlight;
    const content = {
      what: 'flight-acceptance',
      release: row.hash,
      releaseId: row.id,
      aircraft: row.aircraft.registration,
      from: flight.from.ident,
      to: flight.to.ident,
      departAt: instant(row.departAt),
      arriveAt: instant(row.arriveAt),
      outcome: row.outcome,
      limits: limits.map(({ cite, because, house }) => ({ cite, because, ...(house ? { house } : {}) })),
      statement: ACCEPTANCE_STATEMENT,
      signer: { name: actor.name, certificate },
      at: instant(now),
    };
    const { content: kept, hash, signedAt, signedOn } = signatureOver(content, now, zone);
    await tx.flightAcceptance.create({
      data: {
        id: requestId,
        operatorId,
        releaseId: row.id,
        personId: actor.personId,
        personName: actor.name,
        certificateKind: certificate.kind,
        certificateNumber: certificate.number,
        statement: ACCEPTANCE_STATEMENT,
        content: kept,
        hash,
        signedAt,
        signedOn,
      },
    });
    const value: Accepted = { releaseId: row.id, acceptanceId: requestId, acceptedAt: instant(signedAt) };
    return {
      value,
      audit: {
        subjectKind: 'release',
        subjectId: row.id,
        detail: { aircraft: row.aircraft.registration, departAt: instant(row.departAt), hash },
      },
    };
  },
});

async function judgeAgain(context: Context, row: Parameters<typeof recallNow>[1]): Promise<void> {
  const recall = await recallNow(context, row, await factsNow(context, row.aircraftId));
  if (recall === null) return;
  const lines = recall.lines.map(({ cite, because }) => ({ cite, because }));
  if (recall.what === 'void') {
    const say = 'The answer is no go now. Do not depart on this release; ask the desk.';
    throw new Refusal('no_go', { say, lines });
  }
  const say =
    'Something limits this flight now that the release does not tell. Ask the desk to release it anew.';
  throw new Refusal('superseded', { say, lines });
}

/** The pilot certificate it is signed under. It may have been revoked since the release. */
async function pilotCertificate({ tx, operatorId, actor, now }: Context, zone: string) {
  const signer = signerFacts(await readSigner(tx, operatorId, actor.personId));
  const left = leftBars(signer, dayAtBase(now, zone));
  if (left.length > 0) throw new Refusal('signature_refused', { lines: linesOf(left) });
  const { pilot } = signer;
  if (!pilot) {
    const because = `No pilot certificate of ${signer.name} is on file.`;
    throw new Refusal('signature_refused', { lines: [{ cite: 'house-caution', because }] });
  }
  const over = expiredBars('pilot certificate', pilot, dayAtBase(now, zone), '14cfr91.3(a)');
  if (over.length > 0) throw new Refusal('signature_refused', { lines: linesOf(over) });
  return { kind: `${pilot.grade.replaceAll('-', ' ')} pilot`, number: pilot.number };
}
