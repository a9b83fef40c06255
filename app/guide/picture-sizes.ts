/** Pixels of the guides' pictures: the part of the screen that a browser of that size shows first. */
export const PICTURE_SIZES = {
  phone: { width: 390, height: 844 },
  desktop: { width: 1280, height: 800 },
} as const;
