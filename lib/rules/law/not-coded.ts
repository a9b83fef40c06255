import type { CiteId } from './registry';

/**
 * Paragraphs of the sections we hold that no rule decides, each with the reason ("not coded, because ...").
 * A paragraph leaves this list when a rule starts to cite it.
 */
export const NOT_CODED = {
  '14cfr91.3(b)': 'it is relief in flight, and an answer for a dispatch is given on the ground',
  '14cfr91.3(c)': 'the report goes from the pilot to the FAA, after the flight',
  '14cfr91.9(c)':
    'the identification marks are painted on and looked at on the walkaround, not kept as a fact',
  '14cfr91.203(d)': 'fuel venting and exhaust emissions are settled when the type is certificated',
  '14cfr91.205(f)': 'Category II approaches are not flown by schools, and no flight can be filed as one here',
  '14cfr91.205(g)':
    'Category III approaches are not flown by schools, and no flight can be filed as one here',
  '14cfr91.205(h)': 'night vision goggle flights cannot be filed here',
  '14cfr91.205(i)': 'it only excepts certificate holders from (f) and (g), which are not coded',
  '14cfr91.205(b)(16)': 'it is reserved; the rule that stood there is in (b)(14) now',
  '14cfr91.207(a)(1)': 'flights under parts 121, 125 and 135 are outside this tool',
  '14cfr91.207(b)': 'where the transmitter is attached is settled at installation',
  '14cfr91.207(f)(1)': 'it ended on 1 January 2004 and was for turbojets',
  '14cfr91.207(f)(2)': 'scheduled air carriers are outside this tool',
  '14cfr91.207(f)(4)':
    'no flight can be filed here as design or testing; without the relief the answer is stricter',
  '14cfr91.207(f)(5)':
    'no flight can be filed here as manufacture or delivery; without the relief the answer is stricter',
  '14cfr91.207(f)(6)':
    'no flight can be filed here as aerial application; without the relief the answer is stricter',
  '14cfr91.207(f)(7)': 'research and development certificates are not standard ones, which are assumed',
  '14cfr91.207(f)(8)':
    'no flight can be filed here as exhibition, racing, market survey or the like; without the relief the answer is stricter',
  '14cfr91.207(f)(11)': 'it is for large aircraft in air transportation',
  '14cfr91.209(a)(2)': 'it is about parking and moving on the ground; the answer is for a flight',
  '14cfr91.209(a)(3)': 'it is about anchoring on water',
  '14cfr91.213(c)': 'it binds holders of lists under parts 91K, 121, 125 and 135, who are outside this tool',
  '14cfr91.215(a)': 'the standard of the transponder is settled at installation',
  '14cfr91.215(e)': 'unmanned aircraft are outside this tool',
  '14cfr91.225(c)': 'an approved deviation of the equipment is settled at installation',
  '14cfr91.225(h)': 'unmanned aircraft are outside this tool',
  '14cfr91.225(i)': 'it only says where standards can be read',
  '14cfr91.403(d)':
    'the written permission is between the owner and the holder, before the alteration is made',
  '14cfr91.409(e)': 'large and turbine aircraft are outside this tool',
  '14cfr91.409(f)': 'it serves (e), which is not coded',
  '14cfr91.409(g)': 'it serves (e), which is not coded',
  '14cfr91.409(h)': 'it serves (e), which is not coded',
  '14cfr43.3(f)': 'air carriers are outside this tool',
  '14cfr43.3(h)': 'part 135 rotorcraft in remote areas are outside this tool',
  '14cfr43.3(i)': 'part 135 cabins are outside this tool',
  '14cfr43.7(e)': 'air carriers are outside this tool',
  '14cfr43.7(g)': 'light-sport category aircraft have a special certificate; a standard one is assumed',
  '14cfr43.7(h)': 'light-sport category aircraft have a special certificate; a standard one is assumed',
  '14cfr43.9(b)': 'air carriers are outside this tool',
  '14cfr43.15(b)': 'the rotorcraft part of a checklist is the work of the inspector',
  '14cfr43.15(c)(3)': 'turbine aircraft are outside this tool',
  '14cfr43appB(c)': 'work by foreign persons under 43.17 is outside this tool',
  '14cfr65.85(b)': 'light-sport category aircraft have a special certificate; a standard one is assumed',
  '14cfr65.87(b)': 'light-sport category aircraft have a special certificate; a standard one is assumed',
  '14cfr65.93(d)': 'the relief of 61.40 is for people whose authorization expired abroad; the FAA decides it',
  '14cfr65.95(b)': 'showing the authorization on request is between the holder and the one who asks',
  '14cfr21.197(a)(3)': 'production flight testing is outside this tool',
  '14cfr21.197(a)(5)': 'demonstration of new production aircraft is outside this tool',
  '14cfr21.197(b)': 'flight over the maximum takeoff weight is outside this tool',
  '14cfr21.197(c)': 'continuing authority is for certificate holders who are outside this tool',
  '14cfr61.57(b)':
    'currency of a pilot is not the airworthiness of an aircraft; it is named so that its night is not used',
} as const satisfies Partial<Record<CiteId, string>>;
