/**
 * Where the areas of an aircraft sit on our drawing: a light high-wing aircraft from above, nose up, so that its left is on
 * the left. Drawn by us from plain shapes; it shows no real type.
 */
import { isArea, type AreaKey } from '@/lib/rules/walkaround/areas';

/** Size of the drawing in its own units; at 358 px width (a phone of 390 px) one unit is one pixel. */
export const DRAWING = { width: 358, height: 470 } as const;

/** Side of a place's target in pixels, at any size of the drawing (WCAG 2.2, 2.5.8 asks for 24; the house rule is 44). */
export const TARGET = 44;

/** The narrowest the drawing is shown, in pixels: a phone of 360 px less the margins of the page. */
export const NARROWEST = 328;

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Columns from the left tip to the right tip, rows from the propeller to the tail. */
const [C1, C2, C3, MID, C5, C6, C7] = [30, 79, 129, 179, 229, 279, 328] as const;

export const PLACES: Readonly<Record<AreaKey, Place>> = {
  'last-look': { x: 56, y: 56 },
  propeller: { x: MID, y: 30 },
  'nose-left': { x: C3, y: 84 },
  'nose-gear': { x: MID, y: 84 },
  'nose-right': { x: C5, y: 84 },
  windshield: { x: MID, y: 134 },
  'left-tip': { x: C1, y: 164 },
  'left-leading-edge': { x: C2, y: 164 },
  'left-wing-fuel': { x: C3, y: 164 },
  'right-wing-fuel': { x: C5, y: 164 },
  'right-tip-leading-edge': { x: C7, y: 164 },
  cabin: { x: MID, y: 184 },
  'left-wing-and-gear': { x: C1, y: 216 },
  'left-flap-aileron': { x: C2, y: 216 },
  'left-main-gear': { x: C3, y: 216 },
  'right-main-gear': { x: C5, y: 216 },
  'right-flap-aileron': { x: C6, y: 216 },
  'cabin-power-on': { x: MID, y: 234 },
  baggage: { x: C3, y: 268 },
  belly: { x: MID, y: 286 },
  'left-rear-fuselage': { x: C3, y: 326 },
  'right-rear-fuselage': { x: C5, y: 326 },
  approach: { x: 56, y: 352 },
  tail: { x: MID, y: 420 },
};

/** Where a stored station sits, or null for one that is no area: that is shown in the list only. */
export const placeOf = (area: string): Place | null => (isArea(area) ? PLACES[area] : null);
