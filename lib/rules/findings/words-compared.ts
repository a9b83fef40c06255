/**
 * Plain normalising of what people write on the ramp, for `likelyTheSame`: case, accents, plurals, trade synonyms, one slip
 * of the finger. No grammar and no learning: a table that can be read. American and British spelling both count.
 */

/** The words of a text: lower case, no accents, no punctuation, in order. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .normalize('NFKD')
    .replace(/[\u0300-\u036f'’]/g, '')
    .toLowerCase()
    .replace(/\b([lr])\/h\b/g, '$1h')
    .replace(/\bco-pilot/g, 'copilot')
    .replace(/([a-z])(\d)/g, '$1 $2')
    .replace(/#\s*(\d)/g, ' number $1')
    .split(/[^a-z0-9]+/)
    .filter((word) => word !== '');

/** Parts of an aircraft and what people call them. The longest name wins; a name is one to three words. */
const PARTS: Readonly<Record<string, readonly string[]>> = {
  tyre: ['tyre', 'tire', 'tread', 'sidewall', 'cord', 'rubber'],
  wheel: ['wheel', 'nosewheel', 'rim'],
  'wheel fairing': ['wheel fairing', 'wheel pant', 'fairing', 'pant', 'spat', 'wheel cover'],
  brake: [
    'brake',
    'break',
    'caliper',
    'calliper',
    'brake pad',
    'brake line',
    'brake disc',
    'pad',
    'disc',
    'rotor',
  ],
  strut: ['strut', 'oleo'],
  'shimmy damper': ['shimmy damper', 'damper', 'dampener', 'shimmy'],
  'torque link': ['torque link', 'scissor', 'scissor link'],
  propeller: ['propeller', 'prop', 'blade', 'airscrew'],
  spinner: ['spinner', 'prop cone'],
  hub: ['hub', 'prop hub', 'propeller hub'],
  'fuel cap': ['fuel cap', 'filler cap', 'tank cap', 'gas cap'],
  'fuel drain': ['fuel drain', 'drain', 'sump', 'strainer', 'gascolator', 'drain valve', 'quick drain'],
  'fuel sample': ['sample', 'fuel sample'],
  'fuel vent': ['fuel vent', 'vent'],
  'fuel gauge': ['fuel gauge', 'fuel quantity', 'fuel indicator', 'fuel quantity indicator', 'gas gauge'],
  'fuel tank': ['tank', 'fuel tank'],
  fuel: ['fuel', 'gas', 'avgas', 'petrol'],
  oil: ['oil', 'dipstick', 'oil level'],
  'oil cap': ['oil cap', 'oil filler', 'oil filler cap'],
  'oil cooler': ['oil cooler', 'cooler', 'oil hose', 'oil line'],
  'oil pressure gauge': ['oil pressure gauge', 'oil pressure', 'oil gauge', 'op gauge'],
  exhaust: ['exhaust', 'exhaust pipe', 'stack', 'tailpipe', 'exhaust stack', 'soot'],
  muffler: ['muffler', 'silencer', 'heat shroud', 'shroud'],
  belt: ['alternator belt', 'drive belt', 'alt belt', 'v belt', 'fan belt'],
  alternator: ['alternator', 'generator', 'charging', 'charge', 'ammeter', 'alt'],
  battery: ['battery', 'batt'],
  cowl: ['cowl', 'cowling', 'cowl flap', 'cowl fastener', 'cowl screw'],
  baffle: ['baffle', 'baffling', 'baffle seal'],
  inlet: ['inlet', 'intake', 'nest', 'air inlet'],
  'air filter': ['air filter', 'filter', 'induction filter'],
  'position light': [
    'position light',
    'nav light',
    'navigation light',
    'nav bulb',
    'tail light',
    'wingtip light',
    'wing tip light',
    'red light',
    'green light',
    'navlight',
    'nav lamp',
    'position lamp',
    'tip light',
    'white light',
  ],
  'landing light': ['landing light', 'landing lamp', 'll', 'ldg light', 'landing bulb', 'ldg lt'],
  'taxi light': ['taxi light', 'taxi lamp'],
  beacon: [
    'beacon',
    'rotating beacon',
    'anti collision',
    'anti collision light',
    'anticollision',
    'strobe',
    'strobe light',
    'flashing light',
  ],
  'cabin light': [
    'dome light',
    'cabin light',
    'map light',
    'panel light',
    'instrument light',
    'overhead light',
  ],
  light: ['light', 'lamp', 'bulb', 'led'],
  lens: ['lens', 'light lens', 'light cover'],
  pitot: ['pitot', 'pitot tube', 'pitot mast'],
  'pitot heat': ['pitot heat', 'pitot heater', 'heated pitot'],
  'static port': ['static port', 'static', 'static hole', 'static vent', 'static source'],
  'stall warning': ['stall warning', 'stall horn', 'stall vane', 'stall warner', 'stall'],
  airspeed: ['airspeed', 'asi', 'airspeed indicator', 'speed indicator'],
  altimeter: ['altimeter', 'alt meter'],
  compass: ['compass', 'whiskey compass', 'mag compass', 'magnetic compass'],
  attitude: ['attitude', 'attitude indicator', 'horizon', 'artificial horizon', 'ai'],
  'heading gyro': ['heading', 'heading indicator', 'dg', 'directional gyro', 'heading gyro', 'hsi'],
  'turn indicator': ['turn coordinator', 'turn indicator', 'turn and bank'],
  vacuum: ['vacuum', 'suction', 'vacuum gauge', 'vacuum pump'],
  aileron: ['aileron'],
  elevator: ['elevator'],
  rudder: ['rudder'],
  flap: ['flap'],
  trim: ['trim', 'trim tab', 'tab'],
  hinge: ['hinge', 'hinge pin', 'hinge bolt'],
  'static wick': ['static wick', 'wick', 'static discharger'],
  windshield: ['windshield', 'windscreen', 'front window'],
  window: ['window', 'side window', 'storm window'],
  door: ['door', 'latch', 'door latch', 'door handle'],
  'baggage door': ['baggage door', 'luggage door', 'cargo door'],
  seat: ['seat', 'seat track', 'seat rail', 'seat pin', 'chair'],
  'seat belt': ['seat belt', 'seatbelt', 'shoulder harness', 'harness', 'safety belt', 'lap belt', 'buckle'],
  extinguisher: ['extinguisher', 'fire bottle', 'fire extinguisher', 'extinguisher gauge'],
  elt: ['elt', 'emergency locator', 'locator', 'emergency transmitter', 'beacon battery', 'elt battery'],
  placard: ['placard', 'decal', 'sticker', 'marking', 'label'],
  antenna: ['antenna', 'aerial', 'com antenna', 'whip'],
  transponder: ['transponder', 'xpdr', 'squawk', 'mode c', 'encoder', 'altitude reporting'],
  radio: ['radio', 'com', 'comm', 'com radio', 'transmit'],
  nav: ['nav', 'vor', 'navigation'],
  gps: ['gps', 'satellite navigation'],
  skin: ['skin', 'rivet'],
  leg: ['leg', 'gear leg'],
  heater: ['heater', 'cabin heat'],
  fan: ['fan'],
  intercom: ['intercom', 'headset', 'headset jack', 'jack'],
  mixture: ['mixture', 'mixture control'],
  throttle: ['throttle'],
  primer: ['primer'],
  magneto: ['magneto', 'mag'],
  'tow bar': ['tow bar', 'towbar'],
  'control lock': ['control lock', 'gust lock'],
  'fuel selector': ['fuel selector', 'selector'],
  'usb socket': ['usb', 'usb socket', 'charger', 'power socket'],
};

/** What is wrong with it, and what people call that. */
const TROUBLES: Readonly<Record<string, readonly string[]>> = {
  nick: ['nick', 'dent', 'ding', 'dinged', 'dented', 'gouge', 'chip', 'chipped', 'nicked', 'notch', 'gash'],
  crack: ['crack', 'cracked', 'cracking', 'split', 'fracture', 'fissure', 'crazed', 'crazing'],
  worn: ['worn', 'wear', 'bald', 'thin', 'frayed', 'fraying', 'wore', 'smooth', 'eroded', 'erosion'],
  leak: [
    'leak',
    'leaking',
    'leaky',
    'drip',
    'dripping',
    'weep',
    'weeping',
    'seep',
    'seeping',
    'wet',
    'puddle',
    'stain',
    'streak',
  ],
  dead: [
    'dead',
    'inop',
    'inoperative',

    'failed',
    'fail',
    'fails',
    'dark',
    'burnt',
    'burned',
    'unserviceable',
    'silent',
    'blank',
    'broke',
  ],
  loose: ['loose', 'wobbly', 'play', 'slack', 'wobble', 'wobbles', 'rattle', 'rattling', 'sloppy', 'slop'],
  missing: ['missing', 'gone', 'lost', 'absent'],
  broken: ['broken', 'torn', 'snapped', 'damaged', 'ripped', 'tore'],
  low: ['low', 'flat', 'soft', 'spongy', 'mushy', 'underinflated', 'sinking', 'deflated', 'collapsed'],
  blocked: ['blocked', 'clogged', 'plugged', 'obstructed', 'insect', 'bug', 'mud', 'wasp'],
  water: ['water', 'droplet', 'bubble'],
  dirt: ['dirt', 'rust', 'sediment', 'debris', 'particle', 'speck', 'grit', 'dirty', 'fleck'],
  bent: ['bent', 'bowed', 'crooked', 'twisted', 'buckled', 'wrinkled', 'wrinkle'],
  corrosion: ['corrosion', 'corroded', 'pitting'],
  stiff: ['stiff', 'stuck', 'sticks', 'sticking', 'hard', 'jammed', 'binding', 'seized'],
  fastener: ['fastener', 'screw', 'bolt', 'stud', 'nut', 'cotter', 'pin', 'clip', 'safety wire'],
  expired: ['expired', 'outdated', 'overdue', 'lapsed', 'expiry'],
  unreadable: ['illegible', 'unreadable', 'faded', 'peeled', 'peeling'],
  seal: ['seal', 'gasket', 'o ring'],
  charge: ['discharge', 'undercharged', 'weak'],
};

/** Parts by family: who writes of one member does not mean another. */
const FAMILIES: readonly (readonly string[])[] = [
  ['propeller', 'spinner', 'hub'],
  ['tyre', 'brake', 'strut', 'shimmy damper', 'torque link', 'wheel fairing'],
  ['aileron', 'elevator', 'rudder', 'flap'],
  ['landing light', 'taxi light', 'position light', 'beacon', 'cabin light'],
  [
    'airspeed',
    'altimeter',
    'compass',
    'attitude',
    'heading gyro',
    'turn indicator',
    'oil pressure gauge',
    'fuel gauge',
  ],
  ['radio', 'nav', 'gps', 'transponder', 'elt', 'intercom'],
  ['windshield', 'window', 'door', 'baggage door', 'seat', 'seat belt'],
  ['fuel cap', 'fuel drain', 'fuel vent', 'fuel selector'],
  ['cowl', 'baffle', 'air filter', 'oil cooler', 'exhaust', 'belt'],
  ['pitot', 'static port', 'stall warning'],
];

/** Parts that are a sort of another: "light" may well mean the landing light. */
const SORT_OF: Readonly<Record<string, string>> = {
  'landing light': 'light',
  'taxi light': 'light',
  'position light': 'light',
  beacon: 'light',
  'cabin light': 'light',
  'baggage door': 'door',
  'pitot heat': 'pitot',
  'fuel cap': 'fuel',
  'fuel drain': 'fuel',
  'fuel sample': 'fuel drain',
  'fuel vent': 'fuel',
  'fuel tank': 'fuel',
  'oil cap': 'oil',
  'oil cooler': 'oil',
  hub: 'propeller',
  muffler: 'exhaust',
};

/** Words for a part of almost anything; alone they set nothing apart. */
const GENERAL: ReadonlySet<string> = new Set([
  'light',
  'fuel',
  'oil',
  'skin',
  'leg',
  'hinge',
  'wheel',
  'lens',
  'fuel tank',
]);

export interface PartsCompared {
  /** Named by both. */
  readonly shared: readonly string[];
  /** One names a part, the other what it is a sort of. */
  readonly akin: readonly string[];
  /** Members of one family, each named by one side only: [the first's, the second's]. */
  readonly twins: readonly [string, string] | null;
  /** Both name a part of their own, and nothing in common. */
  readonly isApart: boolean;
}

/** Holds the parts two texts name against each other. */
export function compareParts(one: ReadonlySet<string>, other: ReadonlySet<string>): PartsCompared {
  const shared = [...one].filter((part) => other.has(part)).toSorted();
  const akin = [
    ...[...one].filter((part) => other.has(SORT_OF[part] ?? '') && !other.has(part)),
    ...[...other].filter((part) => one.has(SORT_OF[part] ?? '') && !one.has(part)),
  ].toSorted();
  const isOwn = (part: string) => !GENERAL.has(part);
  const apart = shared.length === 0 && akin.length === 0;
  return {
    shared,
    akin,
    twins: twinsOf(one, other, akin),
    isApart: apart && [...one].some(isOwn) && [...other].some(isOwn),
  };
}

function twinsOf(
  one: ReadonlySet<string>,
  other: ReadonlySet<string>,
  akin: readonly string[],
): readonly [string, string] | null {
  if (akin.length > 0) return null;
  for (const family of FAMILIES) {
    const [a, b] = [family.filter((part) => one.has(part)), family.filter((part) => other.has(part))];
    if (a.length > 0 && b.length > 0 && !a.some((part) => b.includes(part)))
      return [a.join(', '), b.join(', ')];
  }
  return null;
}

const STOP: ReadonlySet<string> = new Set(
  (
    'a an and another any again also am are as at about after all almost am be been before but by bit can cannot cant could ' +
    'did do does dont doesnt during each for from found got had has have he her here his i if in into is it its itself just ' +
    'like looks look looked looking maybe me more most much my near next no none not now of off on one only or other our over ' +
    'quite really saw see seen seems she side side so some still than that the their them then there these they thing this ' +
    'those to too two under up very was we were what when where which while will with work works working would you your when ' +
    'around along close between wing nose tail cabin aircraft airplane plane aeroplane engine area edge gear check checked ' +
    'preflight flight walkaround small big large little inch inches in mm cm psi isnt wont noticed today yesterday ' +
    'leading trailing left right upper lower front forward rear aft inboard outboard inner outer top bottom main mains ' +
    'does out same already reported report says said inside outside three down wide long deep seems new both old good bad need needs'
  ).split(' '),
);

/** Singular of a plain English plural; short words and "-ss" stay. */
function singular(word: string): string {
  if (word.length <= 3 || word.endsWith('ss') || word.endsWith('us')) return word;
  if (word.endsWith('ies')) return `${word.slice(0, -3)}y`;
  if (/(ch|sh|x|ss)es$/.test(word)) return word.slice(0, -2);
  return word.endsWith('s') ? word.slice(0, -1) : word;
}

const byName = (table: Readonly<Record<string, readonly string[]>>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(table).flatMap(([meaning, names]) =>
      names.map((name) => [name.split(' ').map(singular).join(' '), meaning] as const),
    ),
  );
const PART_OF = byName(PARTS);
const TROUBLE_OF = byName(TROUBLES);
const VOCABULARY: ReadonlySet<string> = new Set(
  [...PART_OF.keys(), ...TROUBLE_OF.keys()].flatMap((name) => name.split(' ')),
);

/** By first letter, so that a misspelt word is held against few. */
const BY_INITIAL: ReadonlyMap<string, readonly string[]> = new Map(
  [...new Set([...VOCABULARY].map((word) => word.charAt(0)))].map((initial) => [
    initial,
    [...VOCABULARY].filter((word) => word.startsWith(initial)),
  ]),
);

/** The part a single word names, or null. */
export const partNamed = (word: string): string | null => PART_OF.get(spelled(singular(word))) ?? null;

/** Whether two words differ by one letter put in, left out, changed, or swapped with the next. */
export function isOneSlipApart(one: string, other: string): boolean {
  if (Math.abs(one.length - other.length) > 1) return false;
  let from = 0;
  while (from < one.length && from < other.length && one[from] === other[from]) from += 1;
  const [restOne, restOther] = [one.slice(from), other.slice(from)];
  if (restOne.slice(1) === restOther.slice(1)) return true;
  if (restOne.slice(1) === restOther || restOne === restOther.slice(1)) return true;
  return (
    restOne.length >= 2 &&
    restOne[0] === restOther[1] &&
    restOne[1] === restOther[0] &&
    restOne.slice(2) === restOther.slice(2)
  );
}

/** A misspelt word of the tables put right, when it is one slip from exactly one of them. The first letter is never wrong. */
function spelled(word: string): string {
  if (word.length < 4 || VOCABULARY.has(word) || STOP.has(word)) return word;
  const near = (BY_INITIAL.get(word.charAt(0)) ?? []).filter((known) =>
    word.length === 4
      ? known.length === 4 && areSwapped(word, known)
      : known.length >= 5 && isOneSlipApart(word, known),
  );
  return near.length === 1 ? (near[0] ?? word) : word;
}

/** Short words have too many neighbours for more than two letters swapped: "feul". */
const areSwapped = (one: string, other: string): boolean =>
  [...one].toSorted().join('') === [...other].toSorted().join('') && isOneSlipApart(one, other);

/** What a text is about: parts named, what is wrong with them, and the words the tables do not know. */
export interface Meaning {
  readonly parts: ReadonlySet<string>;
  readonly troubles: ReadonlySet<string>;
  readonly others: ReadonlySet<string>;
}

const LONGEST_NAME = 3;

/** Reads what words are about. Names of several words are taken before names of one. */
export function meaningOf(words: readonly string[]): Meaning {
  const plain = words.map((word) => spelled(singular(word)));
  const parts = new Set<string>();
  const troubles = new Set<string>();
  const others = new Set<string>();
  for (let at = 0; at < plain.length;) {
    const length = nameAt(plain, at, parts, troubles);
    const word = plain[at] ?? '';
    if (length === 0 && !STOP.has(word) && !STOP.has(words[at] ?? '') && /^[a-z]{3,}$/.test(word))
      others.add(word);
    at += Math.max(1, length);
  }
  return { parts, troubles, others };
}

/** Notes the longest name that begins at a place, and gives its length in words; 0 when none does. */
function nameAt(plain: readonly string[], at: number, parts: Set<string>, troubles: Set<string>): number {
  for (let length = Math.min(LONGEST_NAME, plain.length - at); length > 0; length -= 1) {
    const name = plain.slice(at, at + length).join(' ');
    const part = PART_OF.get(name);
    if (part !== undefined) parts.add(part);
    const trouble = part === undefined ? TROUBLE_OF.get(name) : undefined;
    if (trouble !== undefined) troubles.add(trouble);
    if (part !== undefined || trouble !== undefined) return length;
  }
  return 0;
}

/** Members of both, in order of the alphabet. One slip of the finger is forgiven in words of five letters and more. */
export const inCommon = (one: ReadonlySet<string>, other: ReadonlySet<string>): readonly string[] =>
  [...one]
    .filter(
      (word) =>
        other.has(word) ||
        (word.length >= 5 && [...other].some((near) => near.length >= 5 && isOneSlipApart(word, near))),
    )
    .toSorted();
