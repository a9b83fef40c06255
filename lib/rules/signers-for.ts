import { preventiveItem, whyItemDoesNotFit } from './part-43/43-appendix-a-preventive-maintenance';
import { WORK_KIND_NAMES, type WorkToSign } from './work-to-sign';

/**
 * Who could sign this work, in plain words for the refusal screen, one entry a sort of person. Says nothing about dates:
 * recency and expiry come on top. Derived from the same paragraphs as the ruling; the test holds both against each other.
 */
export function signersFor(work: WorkToSign): readonly string[] {
  const half = work.part === 'powerplant' || work.part === 'propeller' ? 'powerplant' : 'airframe';
  const mechanic = `a mechanic with ${half} rating`;
  const station = `a repair station rated for ${
    {
      airframe: 'airframes',
      powerplant: 'powerplants',
      propeller: 'propellers',
      instrument: 'instruments',
      avionics: 'radios',
    }[work.part]
  }`;
  const inspector = 'a mechanic with an inspection authorization in effect';
  switch (work.kind) {
    case 'preventive': {
      const item = preventiveItem(work.preventiveItem);
      if (!item.known || whyItemDoesNotFit(item.value, work)) return [];
      return [
        mechanic,
        station,
        'the owner or operator, or a pilot they named in writing, private or higher, after doing it',
      ];
    }
    case 'minor':
      if (work.part === 'instrument' && !work.swapOnly) return [station, 'the maker of the instrument'];
      return [mechanic, station];
    case 'major':
      return work.part === 'propeller' || work.part === 'instrument'
        ? [station]
        : [`${inspector}, on approved data`, station];
    case 'annual':
      return [inspector, 'a repair station rated for airframes and powerplants'];
    case 'hundred-hour':
      return [mechanic, `a repair station rated for ${half}s`];
    case 'static-test':
      return ['a mechanic with airframe rating', 'a repair station rated for instruments or airframes'];
    case 'altimeter-transponder-test':
      if (work.part === 'instrument')
        return ['a repair station rated for instruments or airframes', 'the maker of the aircraft'];
      return work.part === 'avionics'
        ? ['a repair station rated for radios', 'the maker of the aircraft that fitted the transponder']
        : [];
  }
}

/** One sentence for the refusal screen: "Who can: a mechanic with powerplant rating; a repair station rated for ...". */
export function whoCanSentence(work: WorkToSign): string {
  const who = signersFor(work);
  return who.length === 0
    ? `Nobody can sign ${WORK_KIND_NAMES[work.kind]} entered this way.`
    : `Who can: ${who.join('; ')}.`;
}
