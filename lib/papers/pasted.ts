import {
  MM,
  SOFT,
  LETTER,
  closeSheet,
  decoration,
  openSheet,
  pen,
  tagged,
  write,
  type Sheet,
  type SheetPlan,
} from './sheet';

/** The part of the page that is cut out and pasted into a logbook: 140 mm wide, under a line of instruction. */
const PASTED = { left: (LETTER.width - 140) / 2, width: 140, top: 24, bottom: 24 };
const FRAME = 4;

/** A sheet whose text is cut out along a frame. */
export function openPasted(plan: Omit<SheetPlan, 'column'>): Sheet {
  return openSheet({ ...plan, column: PASTED });
}

/** Where the text ends on this page, in points: the frame ends there. Called before a page is begun on purpose. */
export type Ends = Map<number, number>;
export function endHere({ doc }: Sheet, ends: Ends): void {
  ends.set(doc.bufferedPageRange().count - 1, doc.y);
}

/** Draws the frame to cut along on every page, and closes. A page whose text flowed on is cut at its full height. */
export function closePasted(sheet: Sheet, foot: string, ends: Ends = new Map()): Promise<Uint8Array> {
  endHere(sheet, ends);
  const full = (LETTER.height - PASTED.bottom) * MM;
  return closeSheet(sheet, foot, (page, of) => {
    const { doc } = sheet;
    decoration(sheet, () => {
      doc
        .rect(
          (PASTED.left - FRAME) * MM,
          (PASTED.top - FRAME) * MM,
          (PASTED.width + 2 * FRAME) * MM,
          (ends.get(page) ?? full) - (PASTED.top - 2 * FRAME) * MM,
        )
        .lineWidth(0.5)
        .dash(3, { space: 3 })
        .stroke(SOFT)
        .undash();
    });
    tagged(sheet, 'P', () => {
      const more = of > 1 ? ` Piece ${page + 1} of ${of}: paste all of them.` : '';
      const at = { x: PASTED.left, y: 11 * MM, width: PASTED.width };
      write(sheet, `Cut along the dashes, paste into the logbook. Print at 100 %.${more}`, { size: 8 }, at);
    });
    pen(sheet);
  });
}
