import { type Metadata } from 'next';
import { notFound } from 'next/navigation';
import { BareShell } from '../_ui/bare-shell';
import { Button, ButtonRow, LinkButton, SubmitButton } from '../_ui/button';
import { Caution } from '../_ui/caution';
import { Cite } from '../_ui/cite';
import {
  Checkbox,
  ChoiceGroup,
  FieldError,
  NumberField,
  SelectField,
  TextArea,
  TextField,
} from '../_ui/fields';
import { OutcomeMark, SeverityMark } from '../_ui/marks';
import { DateText, HoursText, Moment } from '../_ui/moment';
import { Notice } from '../_ui/notice';
import { Card, EmptyState, FactList, PageTitle, Section } from '../_ui/page';
import { ProblemNotice } from '../_ui/problem-notice';
import { ShapeMark, Tag, type Shape, type Tone } from '../_ui/tag';
import { VerdictLines } from '../_ui/verdict-lines';
import { PROBLEMS } from '@/lib/problems';
import { type Line } from '@/lib/rules/verdict';
import styles from './parts.module.css';

export const metadata: Metadata = { title: 'Parts' };
export const dynamic = 'force-dynamic';

const COLOURS = [
  'ground',
  'sheet',
  'sunk',
  'ink',
  'soft',
  'line',
  'edge',
  'slab',
  'key',
  'focus',
  'red',
  'red-fill',
  'red-tint',
  'amber',
  'amber-fill',
  'amber-tint',
  'green',
  'green-fill',
  'green-tint',
  'blue',
  'blue-tint',
  'grey',
  'grey-tint',
] as const;

const TONES: readonly (readonly [Tone, string])[] = [
  ['red', 'Grounded'],
  ['amber', 'Limit, or a decision owed'],
  ['green', 'Go, or signed'],
  ['blue', 'For information'],
  ['grey', 'Nobody has looked'],
];

const SHAPES: readonly Shape[] = [
  'block',
  'wedge',
  'disc',
  'ring',
  'dot',
  'question',
  'dashes',
  'tick',
  'up',
  'down',
  'cross',
];

/** Invented, one of each effect, to see the parts by. */
const LINES: readonly Line[] = [
  {
    effect: 'bars',
    cite: '14cfr91.205(c)(4)',
    because: 'The landing light does not work and the flight is for hire at night.',
  },
  {
    effect: 'limits',
    cite: '14cfr91.209(a)(1)',
    because: 'Down by sunset: the position lights are deferred.',
  },
  { effect: 'notes', cite: '14cfr91.7(b)', because: 'The pilot in command decides.' },
  { effect: 'supports', cite: '14cfr91.409(a)(1)', because: 'The annual inspection is good.' },
];

/**
 * Every part of the screens on one page, for whoever builds the next screen. Shown while developing, and where
 * WHEELCHOCK_PARTS=yes asks for it (the browser tests do); on a school's server there is no such page.
 */
export default function PartsPage() {
  if (process.env.NODE_ENV === 'production' && process.env.WHEELCHOCK_PARTS !== 'yes') notFound();
  return (
    <BareShell>
      <PageTitle
        lead="What the screens are made of. Words and data here are invented."
        side={<Tag tone="blue">For builders</Tag>}
      >
        Parts
      </PageTitle>
      <Section title="Colours">
        <ul className={styles.colours}>
          {COLOURS.map((name) => (
            <li key={name}>
              <span className={styles.colour} style={{ background: `var(--${name})` }} aria-hidden="true" />
              <code>--{name}</code>
            </li>
          ))}
        </ul>
      </Section>
      <Section title="States: a word, a shape, a colour">
        <div className={styles.row}>
          {TONES.map(([tone, word]) => (
            <Tag key={tone} tone={tone}>
              {word}
            </Tag>
          ))}
        </div>
        <div className={styles.row}>
          {(['go', 'go-with-limits', 'no-go', null] as const).map((outcome) => (
            <OutcomeMark key={String(outcome)} outcome={outcome} />
          ))}
        </div>
        <div className={styles.row}>
          {(['grounding', 'limiting', 'watch', 'note', null] as const).map((severity) => (
            <SeverityMark key={String(severity)} severity={severity} />
          ))}
        </div>
        <div className={styles.row}>
          {SHAPES.map((shape) => (
            <span key={shape}>
              <ShapeMark shape={shape} /> {shape}
            </span>
          ))}
        </div>
      </Section>
      <Section title="Lines of an answer">
        <Card edge="red">
          <VerdictLines lines={LINES} />
        </Card>
        <p>
          A paragraph by itself: <Cite cite="14cfr91.213(d)" />
        </p>
      </Section>
      <Section title="Messages">
        <Notice tone="blue" title="For knowledge">
          <p>Waits to be read.</p>
        </Notice>
        <ProblemNotice problem={{ code: 'try_again', say: PROBLEMS.try_again.say }} />
        <EmptyState title="Nothing here yet.">
          <p>Says what would be here and what to do.</p>
        </EmptyState>
        <Caution />
      </Section>
      <Section title="Buttons">
        <ButtonRow>
          <Button weight="main">Main</Button>
          <Button>Plain</Button>
          <Button weight="quiet">Quiet</Button>
          <LinkButton href="/parts">A link</LinkButton>
          <SubmitButton pending pendingWords="Sending…">
            Send
          </SubmitButton>
        </ButtonRow>
      </Section>
      <Section title="Fields">
        <TextField name="text" label="One line" hint="A hint stands before the field." />
        <TextArea name="area" label="More lines" optional />
        <NumberField name="number" label="A number" unit="h" />
        <SelectField name="select" label="One of many" choices={[{ value: 'a', label: 'First' }]} />
        <ChoiceGroup
          name="choice"
          label="One of few"
          choices={[
            { value: 'yes', label: 'Yes' },
            { value: 'no', label: 'No' },
            { value: '', label: 'Not known yet' },
          ]}
        />
        <Checkbox name="tick" label="A tick" />
        <FieldError>What is wrong, and how to put it right.</FieldError>
      </Section>
      <Section title="Times and numbers">
        <FactList
          facts={[
            { name: 'Moment', value: <Moment at="2026-03-08T15:04:00Z" zone="America/Chicago" /> },
            { name: 'Date', value: <DateText date="2026-03-31" /> },
            { name: 'Hours', value: <HoursText tenths={12345} /> },
          ]}
        />
      </Section>
    </BareShell>
  );
}
