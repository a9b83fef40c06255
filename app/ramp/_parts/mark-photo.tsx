'use client';

import { useWords } from '#words';
import { said } from '@/lib/words/said';
import { type Translate } from '@/lib/words/translate';
import { useEffect, useRef, useState, type PointerEvent } from 'react';
import { Marks } from '../../_ui/marked-photo';
import { Button } from '../../_ui/button';
import { type KeptPhoto, type PhotoMark } from '../_phone/shapes';
import styles from './mark-photo.module.css';
import { markOfStroke, MARKS_PER_PHOTO, moved, ringAround, sized, type Point } from './mark-lines';

/**
 * The screen for drawing on a photo: with a finger around or along the thing, or with keys and buttons. Every stroke is
 * kept at once, so there is nothing to lose and nothing to cancel; Undo takes the last one back.
 */
export default function MarkPhoto(props: {
  photo: KeptPhoto;
  url: string;
  onMarks: (marks: readonly PhotoMark[]) => void;
  onDone: () => void;
}) {
  const t = useWords();
  const { photo, url, onMarks, onDone } = props;
  // What is drawn is shown from here: two quick strokes must not pass each other on the way through the phone's store.
  const [marks, setMarks] = useState(photo.marks);
  const dialog = useRef<HTMLDialogElement>(null);
  const [tool, setTool] = useState<PhotoMark['kind']>('ring');
  const last = marks.at(-1);
  const isFull = marks.length >= MARKS_PER_PHOTO;

  useEffect(() => {
    // It is taken away with the component; closing it then would say that one is done.
    if (dialog.current && !dialog.current.open) dialog.current.showModal();
  }, []);

  function draw(next: readonly PhotoMark[]) {
    setMarks(next);
    onMarks(next);
  }
  const change = (changed: PhotoMark) => draw([...marks.slice(0, -1), changed]);
  useKeys(dialog, (step) => {
    if (last) change('by' in step ? sized(last, step.by) : moved(last, step.dx, step.dy));
  });

  return (
    <dialog ref={dialog} className={styles.dialog} aria-labelledby="mark-title" onClose={onDone}>
      <div className={styles.head}>
        <h2 id="mark-title">{t('Mark the photo')}</h2>
        <Button weight="main" onClick={() => dialog.current?.close()}>
          {t('Done')}
        </Button>
      </div>
      <DrawOn
        url={url}
        photo={photo}
        tool={tool}
        marks={marks}
        onMark={(mark) => !isFull && draw([...marks, mark])}
      />
      <p role="status" className={styles.status}>
        {isFull
          ? t('That is {marks_per_photo} marks, as many as one photo takes.', {
              marks_per_photo: MARKS_PER_PHOTO,
            })
          : last
            ? whereInWords(t, last, marks.length)
            : t('Draw around it with a finger.')}
      </p>
      <div className={styles.tools}>
        <Button aria-pressed={tool === 'ring'} onClick={() => setTool('ring')}>
          {t('Ring')}
        </Button>
        <Button aria-pressed={tool === 'line'} onClick={() => setTool('line')}>
          {t('Line')}
        </Button>
        <Button disabled={isFull} onClick={() => draw([...marks, ringAround([500, 500])])}>
          {t('Put a ring')}
        </Button>
        <Button disabled={!last} onClick={() => draw(marks.slice(0, -1))}>
          {t('Undo')}
        </Button>
      </div>
      <fieldset className={styles.tools} disabled={!last}>
        <legend className="out-of-sight">
          {t('Move the last mark. The arrow keys, plus and minus do the same.')}
        </legend>
        {MOVES.map(({ label, sign, step }) => (
          <Button
            key={label}
            aria-label={label}
            title={label}
            onClick={() =>
              last && change('by' in step ? sized(last, step.by) : moved(last, step.dx, step.dy))
            }
          >
            <span aria-hidden="true">{sign}</span>
          </Button>
        ))}
      </fieldset>
    </dialog>
  );
}

type Step = { readonly dx: number; readonly dy: number } | { readonly by: number };

const MOVES: readonly {
  readonly label: string;
  readonly sign: string;
  readonly step: Step;
  readonly keys: readonly string[];
}[] = [
  { label: said('Left'), sign: '←', step: { dx: -25, dy: 0 }, keys: ['ArrowLeft'] },
  { label: said('Right'), sign: '→', step: { dx: 25, dy: 0 }, keys: ['ArrowRight'] },
  { label: said('Up'), sign: '↑', step: { dx: 0, dy: -25 }, keys: ['ArrowUp'] },
  { label: said('Down'), sign: '↓', step: { dx: 0, dy: 25 }, keys: ['ArrowDown'] },
  { label: said('Smaller'), sign: '−', step: { by: -20 }, keys: ['-'] },
  { label: said('Larger'), sign: '+', step: { by: 20 }, keys: ['+', '='] },
];

/** Keys work wherever the focus is within the screen: nothing else in it takes arrows. */
function useKeys(dialog: React.RefObject<HTMLDialogElement | null>, onStep: (step: Step) => void) {
  const latest = useRef(onStep);
  useEffect(() => {
    latest.current = onStep;
  });
  useEffect(() => {
    const shown = dialog.current;
    const press = (event: KeyboardEvent) => {
      const move = MOVES.find(({ keys }) => keys.includes(event.key));
      if (!move) return;
      event.preventDefault();
      latest.current(move.step);
    };
    shown?.addEventListener('keydown', press);
    return () => shown?.removeEventListener('keydown', press);
  }, [dialog]);
}

/** The picture with a layer over it that follows the finger. */
function DrawOn(props: {
  url: string;
  photo: KeptPhoto;
  marks: readonly PhotoMark[];
  tool: PhotoMark['kind'];
  onMark: (mark: PhotoMark) => void;
}) {
  const t = useWords();
  const { url, photo, marks, tool, onMark } = props;
  const { width, height } = photo;
  const [stroke, setStroke] = useState<readonly Point[]>([]);
  const drawn = stroke.length > 1 ? markOfStroke(tool, stroke) : null;

  const at = (event: PointerEvent<HTMLDivElement>): Point => {
    const box = event.currentTarget.getBoundingClientRect();
    return [((event.clientX - box.left) / box.width) * 1000, ((event.clientY - box.top) / box.height) * 1000];
  };
  function end() {
    const mark = markOfStroke(tool, stroke);
    setStroke([]);
    if (mark) onMark(mark);
  }
  return (
    <div className={styles.stage} style={{ '--ratio': width / height } as React.CSSProperties}>
      {/* eslint-disable-next-line @next/next/no-img-element */}
      <img src={url} alt={t('What was taken')} width={width} height={height} className={styles.picture} />
      <Marks marks={drawn ? [...marks, drawn] : marks} width={width} height={height} />
      <div
        className={styles.layer}
        data-testid="draw-here"
        onPointerDown={(event) => {
          if (!event.isPrimary) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          setStroke([at(event)]);
        }}
        onPointerMove={(event) => {
          const point = at(event);
          if (event.isPrimary) setStroke((before) => (before.length > 0 ? [...before, point] : before));
        }}
        onPointerUp={(event) => event.isPrimary && end()}
        onPointerCancel={() => setStroke([])}
      />
    </div>
  );
}

/** For those who cannot see where it lies. */
function whereInWords(t: Translate, { kind, points }: PhotoMark, count: number): string {
  const middle = (at: readonly number[]) => Math.round((Math.min(...at) + Math.max(...at)) / 20);
  const across = middle(points.map(([x]) => x));
  const down = middle(points.map(([, y]) => y));
  const what = kind === 'ring' ? t('Ring') : t('Line');
  return t('{what}, mark {count}: {across} percent from the left, {down} percent from the top.', {
    what,
    count,
    across,
    down,
  });
}
