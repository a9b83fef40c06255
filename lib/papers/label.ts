/** How large an INOPERATIVE label is and in what type its wording is set. Pure: measuring the words is the caller's. */

export interface LabelSize {
  /** Millimetres, the size it is cut to. */
  readonly width: number;
  readonly height: number;
}

export interface Label extends LabelSize {
  /** Points. */
  readonly type: number;
}

/** Small ones fit beside a switch; a longer wording takes the larger. */
const SMALL: LabelSize = { width: 60, height: 15 };
const LARGE: LabelSize = { width: 90, height: 25 };

/** Millimetres between the words and the edge of the label, border included. */
export const LABEL_MARGIN = 2.5;

/** Type that is read at arm's length; smaller only where a label as high as the sheet would not hold the wording. */
const LEGIBLE = 9;
const LARGEST = 30;
const SMALLEST = 4;
const STEP = 5;
const HIGHEST = 200;

/** Points of height that the wording takes in this type within this width in millimetres. */
export type Measure = (type: number, width: number) => number;

const POINTS = 72 / 25.4;

/** The largest legible type in which the wording fits into this size; null when none does. */
function fit(size: LabelSize, measure: Measure, from = LARGEST, down = LEGIBLE): Label | null {
  const height = (size.height - 2 * LABEL_MARGIN) * POINTS;
  for (let type = from; type >= down; type -= 0.5) {
    if (measure(type, size.width - 2 * LABEL_MARGIN) <= height) return { ...size, type };
  }
  return null;
}

/**
 * Chooses the label: 60 x 15 mm where the wording fits in legible type, else 90 x 25 mm, else 90 mm and as much higher as
 * it takes. No wording is cut.
 */
export function labelFor(measure: Measure): Label {
  const usual = fit(SMALL, measure) ?? fit(LARGE, measure);
  if (usual) return usual;
  for (let height = LARGE.height + STEP; height <= HIGHEST; height += STEP) {
    const higher = fit({ ...LARGE, height }, measure, LEGIBLE);
    if (higher) return higher;
  }
  const full = { ...LARGE, height: HIGHEST };
  return fit(full, measure, LEGIBLE, SMALLEST) ?? { ...full, type: SMALLEST };
}
