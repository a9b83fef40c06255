import path from 'node:path';
import PDFDocument from 'pdfkit';
import { drawable } from './letters';

/** Points of a millimetre: a PDF counts 72 to the inch of 25.4 mm. */
export const MM = 72 / 25.4;

/** US Letter in millimetres: 8.5 x 11 inches. */
export const LETTER = { width: 215.9, height: 279.4 } as const;

export const BLACK = '#000000';
export const SOFT = '#444444';
export const RED = '#b11d22';

const PLAIN = 'plain';
const BOLD = 'bold';
type Face = typeof PLAIN | typeof BOLD;

const FONTS = path.join(process.cwd(), 'node_modules', 'dejavu-fonts-ttf', 'ttf');
const FILES: Readonly<Record<Face, string>> = {
  plain: path.join(FONTS, 'DejaVuSansCondensed.ttf'),
  bold: path.join(FONTS, 'DejaVuSansCondensed-Bold.ttf'),
};

export interface SheetPlan {
  readonly title: string;
  /** What it is about, in one sentence. */
  readonly subject: string;
  /** When it was made: ISO text in UTC. */
  readonly madeAt: string;
  /** Column of text in millimetres from the page's left upper corner. */
  readonly column?: {
    readonly left: number;
    readonly width: number;
    readonly top: number;
    readonly bottom: number;
  };
}

const WHOLE_PAGE = { left: 18, width: LETTER.width - 36, top: 18, bottom: 22 };

type Document = InstanceType<typeof PDFDocument>;

/**
 * A paper under way: US Letter, tagged and titled for screen readers, in an embedded open font. Text flows over as many
 * pages as it takes. Measures are millimetres; sizes of type are points.
 */
export interface Sheet {
  readonly doc: Document;
  readonly column: NonNullable<SheetPlan['column']>;
  /** The text as this sheet's font can draw it. */
  readonly words: (text: string) => string;
}

/** Opens a sheet. */
export function openSheet(plan: SheetPlan): Sheet {
  const column = plan.column ?? WHOLE_PAGE;
  const doc = new PDFDocument({
    size: [LETTER.width * MM, LETTER.height * MM],
    margins: {
      left: column.left * MM,
      right: (LETTER.width - column.left - column.width) * MM,
      top: column.top * MM,
      bottom: column.bottom * MM,
    },
    // Page numbers and cut lines are drawn when it is known how many pages there are.
    bufferPages: true,
    pdfVersion: '1.7',
    lang: 'en',
    tagged: true,
    displayTitle: true,
    font: FILES.plain,
    info: {
      Title: plan.title,
      Subject: plan.subject,
      Creator: 'Wheelchock',
      CreationDate: new Date(plan.madeAt),
    },
  });
  doc.registerFont(PLAIN, FILES.plain).registerFont(BOLD, FILES.bold).font(PLAIN);
  const hasGlyph = glyphsOf(doc);
  return { doc, column, words: (text) => drawable(text, hasGlyph) };
}

/** The open font of a document, as far as it is asked here: which letters it can draw. */
interface OpenFont {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

function glyphsOf(doc: Document): (codePoint: number) => boolean {
  // pdfkit keeps the font it has opened here; a test notices when it no longer does.
  const { font } = (doc as unknown as { readonly _font: OpenFont })._font;
  return (codePoint) => font.hasGlyphForCodePoint(codePoint);
}

export interface TextStyle {
  readonly size?: number;
  readonly bold?: boolean;
  readonly colour?: string;
}

/** Sets the pen for a text. */
export function pen({ doc }: Sheet, { size = 9.5, bold = false, colour = BLACK }: TextStyle = {}): void {
  doc.font(bold ? BOLD : PLAIN, size).fillColor(colour);
}

/** The paper's one heading. */
export function title(sheet: Sheet, text: string): void {
  tagged(sheet, 'H1', () => write(sheet, text, { size: 15, bold: true }));
  sheet.doc.moveDown(0.3);
}

/** A heading of a part; it never stands alone at the foot of a page. */
export function heading(sheet: Sheet, text: string): void {
  sheet.doc.moveDown(0.6);
  keepTogether(sheet, 18);
  tagged(sheet, 'H2', () => write(sheet, text, { size: 11, bold: true }));
  sheet.doc.moveDown(0.2);
}

export function paragraph(sheet: Sheet, text: string, style: TextStyle = {}): void {
  keepTogether(sheet, 8);
  tagged(sheet, 'P', () => write(sheet, text, style));
  sheet.doc.moveDown(0.25);
}

const LABEL_WIDTH = 36;
const LABEL_GAP = 3;

/** A name with what is said under it, side by side. Nothing said is written as "not stated", never left out. */
export function labelled(sheet: Sheet, name: string, value: string | null): void {
  const { doc, column } = sheet;
  keepTogether(sheet, 8);
  const top = doc.y;
  tagged(sheet, 'P', () => {
    write(sheet, name, { size: 8.5, colour: SOFT }, { x: column.left, width: LABEL_WIDTH, y: top });
  });
  const below = doc.y;
  const page = lastPage(sheet);
  tagged(sheet, 'P', () => {
    const left = column.left + LABEL_WIDTH + LABEL_GAP;
    const width = column.width - LABEL_WIDTH - LABEL_GAP;
    write(
      sheet,
      value === null || value.trim() === '' ? 'not stated' : value,
      {},
      { x: left, width, y: top },
    );
  });
  if (lastPage(sheet) === page) doc.y = Math.max(doc.y, below);
  doc.x = column.left * MM;
  doc.moveDown(0.25);
}

/** A thin line over the whole column. */
export function rule(sheet: Sheet): void {
  const { doc, column } = sheet;
  doc.moveDown(0.3);
  keepTogether(sheet, 4);
  const y = doc.y;
  decoration(sheet, () => {
    doc
      .moveTo(column.left * MM, y)
      .lineTo((column.left + column.width) * MM, y)
      .lineWidth(0.5)
      .stroke(SOFT);
  });
  doc.moveDown(0.4);
}

/** Begins a new page where fewer than `millimetres` are left on this one. */
export function keepTogether({ doc, column }: Sheet, millimetres: number): void {
  if (doc.y + millimetres * MM > (LETTER.height - column.bottom) * MM) doc.addPage();
}

/** Lines and frames: a screen reader passes them over. */
export function decoration({ doc }: Sheet, draw: () => void): void {
  doc.markContent('Artifact', { type: 'Layout' });
  draw();
  doc.endMarkedContent();
}

/** Content of the document's own structure. */
export function tagged({ doc }: Sheet, kind: 'H1' | 'H2' | 'P', draw: () => void): void {
  doc.addStructure(doc.struct(kind, {}, draw));
}

/** Writes at the pen, or at a place in millimetres across and points down. */
export function write(
  sheet: Sheet,
  text: string,
  style: TextStyle,
  at?: { readonly x: number; readonly y: number; readonly width: number },
): void {
  pen(sheet, style);
  const { doc, column } = sheet;
  const place = at ?? { x: column.left, y: doc.y, width: column.width };
  doc.text(sheet.words(text), place.x * MM, place.y, { width: place.width * MM });
}

const lastPage = ({ doc }: Sheet): number => doc.bufferedPageRange().count;

/** Draws on every page, then closes the paper and gives its bytes. `onPage` gets the page's number from 0. */
export async function closeSheet(
  sheet: Sheet,
  foot: string,
  onPage: (page: number, of: number) => void = () => {},
): Promise<Uint8Array> {
  const { doc, column } = sheet;
  const { count } = doc.bufferedPageRange();
  for (let page = 0; page < count; page += 1) {
    doc.switchToPage(page);
    // The foot lies in the margin; with a margin there pdfkit would begin a new page for it.
    doc.page.margins.bottom = 0;
    decoration(sheet, () => {
      pen(sheet, { size: 7.5, colour: SOFT });
      const text = sheet.words(`${foot}    page ${page + 1} of ${count}`);
      const y = (LETTER.height - 12) * MM;
      doc.text(text, column.left * MM, y, { width: column.width * MM, lineBreak: false });
    });
    onPage(page, count);
  }
  const bytes: Uint8Array[] = [];
  const closed = new Promise<Uint8Array>((resolve, reject) => {
    doc.on('data', (chunk: Uint8Array) => bytes.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(bytes)));
    doc.on('error', reject);
  });
  doc.end();
  return closed;
}
