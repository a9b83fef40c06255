/** 1 MB of UTF-8: what a file of rows may have. Apart, because browsers ask it too. */
export const MOST_BYTES = 1_048_576;
