import { LABEL_MARGIN, labelFor, type Label } from './label';
import type { PaperFrame } from './paper';
import {
  BLACK,
  LETTER,
  MM,
  RED,
  SOFT,
  closeSheet,
  decoration,
  openSheet,
  pen,
  tagged,
  write,
  type Sheet,
} from './sheet';

export interface PlacardToPrint {
  readonly id: string;
  readonly wording: string;
  readonly location: string;
  readonly writeUp: string;
  readonly title: string;
}

/** Placards of the live deferrals of one aircraft. */
export interface PlacardSheet extends PaperFrame {
  readonly fileName: string;
  readonly placards: readonly PlacardToPrint[];
}

const LEFT = 15;
const COLUMN = 90;
const GAP = 6;
const TOP = 42;
const BOTTOM = LETTER.height - 20;
const ROW_GAP = 10;
/** Room around the label for its cut marks. */
const MARK = 3;
const CAPTION_TYPE = 8;

interface Cell {
  readonly placard: PlacardToPrint;
  readonly label: Label;
  readonly caption: string;
  /** Millimetres. */
  readonly captionHeight: number;
}

/**
 * Draws the labels at real size, several a sheet, with cut marks; beside each, outside the cut, what it is about and where
 * it goes. A rule of 50 mm on every sheet shows whether the printer has scaled it.
 */
export function placardSheet(view: PlacardSheet): Promise<Uint8Array> {
  const { registration } = view.aircraft;
  const sheet = openSheet({
    title: `${registration}: INOPERATIVE placards`,
    subject: 'Placards for inoperative equipment, 14 CFR 91.213(d)(3), at real size',
    madeAt: view.madeAt,
    column: { left: LEFT, width: 2 * COLUMN + GAP, top: 12, bottom: 12 },
  });
  pageHead(sheet, view);
  if (view.placards.length === 0) {
    at(sheet, 'No deferral of this aircraft has a placard.', { x: LEFT, y: TOP, width: 2 * COLUMN });
  }
  let top = TOP;
  for (const row of inPairs(view.placards.map((placard) => cellOf(sheet, view, placard)))) {
    const caption = Math.max(...row.map((cell) => cell.captionHeight));
    const height = Math.max(...row.map((cell) => caption + 2 * MARK + cell.label.height));
    if (top + height > BOTTOM && top > TOP) {
      sheet.doc.addPage();
      pageHead(sheet, view);
      top = TOP;
    }
    row.forEach((cell, index) => drawCell(sheet, cell, LEFT + index * (COLUMN + GAP), top, caption));
    top += height + ROW_GAP;
  }
  return closeSheet(sheet, `Wheelchock, placards of ${registration}`);
}

function inPairs(cells: readonly Cell[]): readonly (readonly Cell[])[] {
  return cells.flatMap((cell, index) => {
    if (index % 2 === 1) return [];
    const beside = cells[index + 1];
    return [beside ? [cell, beside] : [cell]];
  });
}

function pageHead(sheet: Sheet, { aircraft }: PlacardSheet): void {
  tagged(sheet, 'H1', () =>
    write(sheet, `${aircraft.registration}: INOPERATIVE placards`, { size: 13, bold: true }),
  );
  at(
    sheet,
    'Print at 100 %, not fitted to the page. The rule below is 50 mm long: hold a ruler to it. If it is not, the labels are not at their size.',
    { x: LEFT, y: 19, width: 110 },
  );
  checkRule(sheet, LEFT, 35);
}

const CHECK_MM = 50;

/** A line of exactly 50 mm with an end mark at both ends. */
function checkRule(sheet: Sheet, x: number, y: number): void {
  const { doc } = sheet;
  decoration(sheet, () => {
    doc
      .moveTo(x * MM, y * MM)
      .lineTo((x + CHECK_MM) * MM, y * MM)
      .lineWidth(0.5)
      .stroke(BLACK);
    for (const end of [x, x + CHECK_MM]) {
      doc
        .moveTo(end * MM, (y - 1.5) * MM)
        .lineTo(end * MM, (y + 1.5) * MM)
        .stroke(BLACK);
    }
  });
  at(sheet, `${CHECK_MM} mm`, { x: x + CHECK_MM + 2, y: y - 1.6, width: 20 });
}

function cellOf(sheet: Sheet, { aircraft }: PlacardSheet, placard: PlacardToPrint): Cell {
  const words = sheet.words(placard.wording);
  const label = labelFor((type, width) => {
    pen(sheet, { size: type, bold: true });
    // A word wider than the label would be broken inside: then this type is too large.
    const widest = Math.max(...words.split(/\s+/).map((word) => sheet.doc.widthOfString(word)));
    if (widest > width * MM && type > 9) return Infinity;
    return sheet.doc.heightOfString(words, { width: width * MM, align: 'center' });
  });
  const caption = [
    `${aircraft.registration} ${placard.writeUp}: ${placard.title}`,
    `Goes: ${placard.location}`,
    `Label ${label.width} x ${label.height} mm`,
  ].join('\n');
  pen(sheet, { size: CAPTION_TYPE });
  const height = sheet.doc.heightOfString(sheet.words(caption), { width: COLUMN * MM });
  return { placard, label, caption, captionHeight: height / MM + 1 };
}

function drawCell(sheet: Sheet, cell: Cell, left: number, top: number, captionHeight: number): void {
  const { doc } = sheet;
  const { label, placard } = cell;
  at(sheet, cell.caption, { x: left, y: top, width: COLUMN });
  const y = top + captionHeight + MARK;
  decoration(sheet, () => {
    cutMarks(sheet, left, y, label);
    // Black inside red: in black and white the frame is still a frame.
    doc
      .rect((left + 0.6) * MM, (y + 0.6) * MM, (label.width - 1.2) * MM, (label.height - 1.2) * MM)
      .lineWidth(1.2 * MM)
      .stroke(RED);
  });
  const width = (label.width - 2 * LABEL_MARGIN) * MM;
  tagged(sheet, 'P', () => {
    pen(sheet, { size: label.type, bold: true });
    const words = sheet.words(placard.wording);
    const free = label.height * MM - doc.heightOfString(words, { width, align: 'center' });
    doc.text(words, (left + LABEL_MARGIN) * MM, y * MM + free / 2, { width, align: 'center' });
  });
}

/** Short lines outside the four corners: cut from mark to mark. */
function cutMarks({ doc }: Sheet, left: number, top: number, { width, height }: Label): void {
  for (const x of [left, left + width]) {
    for (const [from, to] of [
      [top - MARK, top - 0.5],
      [top + height + 0.5, top + height + MARK],
    ] as const) {
      doc
        .moveTo(x * MM, from * MM)
        .lineTo(x * MM, to * MM)
        .lineWidth(0.3)
        .stroke(SOFT);
    }
  }
  for (const y of [top, top + height]) {
    for (const [from, to] of [
      [left - MARK, left - 0.5],
      [left + width + 0.5, left + width + MARK],
    ] as const) {
      doc
        .moveTo(from * MM, y * MM)
        .lineTo(to * MM, y * MM)
        .lineWidth(0.3)
        .stroke(SOFT);
    }
  }
}

function at(sheet: Sheet, text: string, place: { x: number; y: number; width: number }): void {
  tagged(sheet, 'P', () =>
    write(sheet, text, { size: CAPTION_TYPE }, { x: place.x, y: place.y * MM, width: place.width }),
  );
}
