import { said } from '@/lib/words/said';

/** Whose guide: one for each of those who work with an aircraft, and one for whoever sets the school up. */
export const READERS = ['pilot', 'mechanic', 'dispatcher', 'manager'] as const;
export type Reader = (typeof READERS)[number];

export const isReader = (word: string): word is Reader => READERS.some((one) => one === word);

/** One thing to do, with a picture of the screen it is done on (public/guide, taken by tests/journeys/guide.spec.ts). */
export interface GuideStep {
  readonly title: string;
  readonly words: readonly string[];
  readonly picture: string;
  /** What the picture shows, for whoever does not see it. */
  readonly shows: string;
}

export interface Guide {
  readonly reader: Reader;
  readonly title: string;
  readonly lead: string;
  /** Pictures of a phone are narrow and high. */
  readonly device: 'phone' | 'desktop';
  readonly steps: readonly GuideStep[];
}

const PILOT: Guide = {
  reader: 'pilot',
  title: said('Guide for pilots'),
  lead: said('Walk round, write up what you find, take the flight. It works without a connection.'),
  device: 'phone',
  steps: [
    {
      title: said('Choose your aircraft'),
      words: [
        said(
          'The ramp lists the aircraft with their answer now. A mark and a word tell it, never a colour alone.',
        ),
        said(
          'Open the aircraft once while you are connected: the phone then keeps its list and what is open on it.',
        ),
      ],
      picture: 'pilot-1',
      shows: said('The ramp on a phone: a list of aircraft, each with its answer.'),
    },
    {
      title: said('Read what stands against it'),
      words: [
        said('Under each line stands its paragraph. Press it to read what the paragraph says.'),
        said('An answer shown without a connection carries its time. It is never a fresh go.'),
      ],
      picture: 'pilot-2',
      shows: said('An aircraft on the ramp with its answer, open write-ups and placards.'),
    },
    {
      title: said('Walk round'),
      words: [
        said(
          'Start the walkaround and go station by station. Numbers outside their limit become a finding by themselves.',
        ),
        said('Put the phone away whenever you like. What you answered is kept on it.'),
      ],
      picture: 'pilot-3',
      shows: said('A station of the walkaround with its items.'),
    },
    {
      title: said('Write up what you find'),
      words: [
        said(
          'Press what fits best, add a photo if you can, and send. Your own words are enough when nothing fits.',
        ),
        said(
          'The bar at the top says what is sent and what still waits on the phone. Nothing is lost in between.',
        ),
      ],
      picture: 'pilot-4',
      shows: said('Writing up a finding: usual findings of the propeller as large buttons.'),
    },
    {
      title: said('Hear what became of it'),
      words: [
        said('“My write-ups” tells what the mechanic decided, and shows flights released to you.'),
        said(
          'A flight released to you waits for your acceptance: read the answer, give your password, go. If it turns void you are told at once.',
        ),
      ],
      picture: 'pilot-5',
      shows: said('A pilot’s own write-ups with what became of each.'),
    },
  ],
};

const MECHANIC: Guide = {
  reader: 'mechanic',
  title: said('Guide for mechanics'),
  lead: said('Judge it, defer it or mend it, and sign for what your certificate allows.'),
  device: 'desktop',
  steps: [
    {
      title: said('Start at the top of the queue'),
      words: [
        said(
          'What grounds an aircraft that is wanted soon stands first. Arrow keys walk the queue, Enter opens, Space ticks.',
        ),
        said('Ticked write-ups of one aircraft become one stay at the shop.'),
      ],
      picture: 'mechanic-1',
      shows: said('The queue of the bench in its order.'),
    },
    {
      title: said('May it be deferred?'),
      words: [
        said(
          'The table answers 91.213 for each kind of operation, paragraph by paragraph, from the aircraft’s own data.',
        ),
        said('What the law leaves to a person is asked of you and is never ticked beforehand.'),
      ],
      picture: 'mechanic-2',
      shows: said('A write-up with the table that says for which operations it may be deferred.'),
    },
    {
      title: said('Enter the work'),
      words: [
        said('Start work, then enter what you did, by which data, with which parts: the entry of 43.9.'),
        said('A form that is refused keeps what you typed, and says at the field what is missing.'),
      ],
      picture: 'mechanic-3',
      shows: said('The entry of a piece of work.'),
    },
    {
      title: said('See what falls due'),
      words: [
        said('Everything due in 30 days or 25 hours, and the deferrals that end with it.'),
        said('Work on something that recurs writes its compliance by itself when it is signed.'),
      ],
      picture: 'mechanic-4',
      shows: said('What falls due, in order of time.'),
    },
    {
      title: said('Find any record again'),
      words: [
        said(
          'Records of an aircraft are complete and in order; each says by whom it was signed and whether it still verifies.',
        ),
        said('A signed entry is never changed. A correction is a new signed entry that says why.'),
      ],
      picture: 'mechanic-5',
      shows: said('The records of one aircraft.'),
    },
  ],
};

const DISPATCHER: Guide = {
  reader: 'dispatcher',
  title: said('Guide for dispatchers'),
  lead: said('The fleet in five seconds, a flight in thirty, with the reason behind every answer.'),
  device: 'desktop',
  steps: [
    {
      title: said('Read the board'),
      words: [
        said(
          'One row an aircraft: what it may do now, and when that changes. Press an answer to read its reasons.',
        ),
        said(
          'The board follows every write by itself. If it cannot reach the server it says so, and shows no old go as a fresh one.',
        ),
      ],
      picture: 'dispatcher-1',
      shows: said('The board with nine aircraft.'),
    },
    {
      title: said('Look at a day'),
      words: [
        said(
          'The day of an aircraft is drawn as it goes. Each border names what begins and what ends there.',
        ),
        said(
          'Sunset, the midnight of a limit and hours that booked flights spend are computed, not guessed.',
        ),
      ],
      picture: 'dispatcher-2',
      shows: said('The day of one aircraft as a timeline.'),
    },
    {
      title: said('Compose the flight'),
      words: [
        said(
          'Aircraft, pilot, from and to, times, purpose. The answer comes with every line and its paragraph.',
        ),
        said('What runs into night or past an inspection is told before you release.'),
      ],
      picture: 'dispatcher-3',
      shows: said('Composing a flight, with the answer beside it.'),
    },
    {
      title: said('When it is no go'),
      words: [
        said(
          'What would make it go is proven by asking again: another aircraft, an earlier return, a placard that is owed, a call to the mechanic.',
        ),
        said('Unknown is never go. The line names the missing fact, and who can enter it.'),
      ],
      picture: 'dispatcher-4',
      shows: said('An aircraft with a no go and its reasons.'),
    },
    {
      title: said('Follow what you released'),
      words: [
        said('The pilot in command accepts on their own phone; the return closes the flight.'),
        said(
          'A grounding write-up makes a release void unless the flight is airborne, and tells you and the pilot at once.',
        ),
      ],
      picture: 'dispatcher-5',
      shows: said('Released flights and where each stands.'),
    },
  ],
};

const MANAGER: Guide = {
  reader: 'manager',
  title: said('Guide for managers'),
  lead: said('From an empty screen to a fleet that can go, in about an hour.'),
  device: 'desktop',
  steps: [
    {
      title: said('Follow the path'),
      words: [
        said(
          'The office shows the steps of setting up and, for each aircraft, what the answer still lacks. It is done when nothing is asked any more.',
        ),
        said('Stop whenever you like. The path knows from your entries where you are.'),
      ],
      picture: 'manager-1',
      shows: said('The path of setting up, with what is still lacking.'),
    },
    {
      title: said('Bring your people in'),
      words: [
        said(
          'Invite each by mail or with a printed link; they choose their own password. Enter certificates as they stand on the paper.',
        ),
        said('Who leaves can never sign again. What they signed stands.'),
      ],
      picture: 'manager-2',
      shows: said('The people of the school with their roles and certificates.'),
    },
    {
      title: said('Enter the aircraft'),
      words: [
        said(
          'Type, aircraft, equipment. A starting set saves typing; confirm each item against the aircraft’s own documents before it counts.',
        ),
        said(
          'What you do not know stays “not known”. That is safe: it says no go and names what is missing.',
        ),
      ],
      picture: 'manager-3',
      shows: said('The fleet: aircraft and their types.'),
    },
    {
      title: said('Carry the history over'),
      words: [
        said(
          'Papers, last-done inspections, open write-ups and deferrals: typed or from a file, signed by whoever vouches for them.',
        ),
        said('They are marked as carried over for ever, and judged like any other.'),
      ],
      picture: 'manager-4',
      shows: said('What was carried over for each aircraft.'),
    },
    {
      title: said('Set the rules of the house'),
      words: [
        said(
          'Be stricter than the law where you want to. A preview shows what a rule would change on the board now.',
        ),
        said(
          'A rule of the house can never loosen the law, and is shown apart from it with its author and date.',
        ),
      ],
      picture: 'manager-5',
      shows: said('Rules of the house with author and date.'),
    },
  ],
};

export const GUIDES: Readonly<Record<Reader, Guide>> = {
  pilot: PILOT,
  mechanic: MECHANIC,
  dispatcher: DISPATCHER,
  manager: MANAGER,
};
