import { fieldRefusal } from '../problems';
import { findingOf } from '../rules/findings/catalogue';
import { said } from '../words/said';

/** A write-up by what it is judged to be, and by what was reported. */
interface NamedFinding {
  readonly findingKey: string | null;
  readonly finding: { readonly findingKey: string | null };
}

/**
 * Where every usual way to put a finding right is a major repair (a bent blade), it is not entered as minor or
 * preventive: that would bring it within reach of a signature the law does not give. What was reported counts as well as
 * what it is judged to be, so that judging it anew does not make the repair smaller.
 */
export function refuseTooSmallAWord(writeUp: NamedFinding, part: string, workKind: string): void {
  if (workKind === 'major') return;
  for (const key of [writeUp.findingKey, writeUp.finding.findingKey]) {
    const usual = (key ? findingOf(key)?.work : undefined)?.filter((way) => way.part === part) ?? [];
    if (usual.length > 0 && usual.every((way) => way.kind === 'major')) {
      throw fieldRefusal('workKind', said('Putting this right is a major repair (part 43 Appendix A(b)).'));
    }
  }
}
