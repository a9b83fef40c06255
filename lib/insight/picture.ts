/**
 * A chart as plain marks in a box of user units: drawn on the page by React and into a file as text from the same list, so
 * that the two cannot differ. What a mark looks like is a word; page and file each have their own colours for it.
 */
export type Mark =
  | {
      readonly is: 'rect';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly look: 'bar' | 'track' | 'warn';
    }
  | {
      readonly is: 'circle';
      readonly x: number;
      readonly y: number;
      readonly r: number;
      /** `ring`: not filled, for what has not ended. */
      readonly look: 'dot' | 'ring';
    }
  | {
      readonly is: 'line';
      readonly x1: number;
      readonly y1: number;
      readonly x2: number;
      readonly y2: number;
      readonly look: 'grid';
    }
  | {
      readonly is: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly look: 'label' | 'value' | 'axis';
    };

export interface Picture {
  readonly title: string;
  /** The same in words for whoever cannot see it. */
  readonly description: string;
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

const COLOURS: Readonly<Record<Mark['look'], string>> = {
  bar: 'fill="#1b4d86"',
  track: 'fill="none" stroke="#83776a"',
  warn: 'fill="#b11d22"',
  dot: 'fill="#1b4d86"',
  ring: 'fill="#ffffff" stroke="#1b4d86" stroke-width="2"',
  grid: 'stroke="#d6ccba"',
  label: 'fill="#201c17"',
  value: 'fill="#201c17" font-weight="600"',
  axis: 'fill="#5a5145"',
};

/** The chart as a file of its own: dark on white, title and words inside. */
export function svgOf(
  { title, description, width, height, marks }: Picture,
  caption: readonly string[],
): string {
  const room = 28 + caption.length * 18;
  const lines = caption.map(
    (line, index) =>
      `<text x="0" y="${46 + index * 18}" font-size="12" fill="#5a5145">${escaped(line)}</text>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="-16 -16 ${width + 32} ${height + room + 32}" width="${(width + 32) * 2}" height="${(height + room + 32) * 2}" font-family="system-ui, sans-serif" font-size="13" role="img" aria-labelledby="title" aria-describedby="words">`,
    `<title id="title">${escaped(title)}</title>`,
    `<desc id="words">${escaped(description)}</desc>`,
    `<rect x="-16" y="-16" width="${width + 32}" height="${height + room + 32}" fill="#ffffff"/>`,
    `<text x="0" y="18" font-size="17" font-weight="700" fill="#201c17">${escaped(title)}</text>`,
    ...lines,
    `<g transform="translate(0 ${room})">`,
    ...marks.map(drawn),
    '</g>',
    '</svg>',
    '',
  ].join('\n');
}

function drawn(mark: Mark): string {
  const look = COLOURS[mark.look];
  switch (mark.is) {
    case 'rect':
      return `<rect x="${mark.x}" y="${mark.y}" width="${mark.width}" height="${mark.height}" ${look}/>`;
    case 'circle':
      return `<circle cx="${mark.x}" cy="${mark.y}" r="${mark.r}" ${look}/>`;
    case 'line':
      return `<line x1="${mark.x1}" y1="${mark.y1}" x2="${mark.x2}" y2="${mark.y2}" ${look}/>`;
    case 'text':
      return `<text x="${mark.x}" y="${mark.y}" text-anchor="${mark.anchor}" ${look}>${escaped(mark.text)}</text>`;
  }
}

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

const escaped = (text: string): string => text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? sign);
