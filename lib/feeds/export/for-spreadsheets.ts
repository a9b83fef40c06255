/**
 * How every CSV leaves the house: RFC 4180 line ends, and UTF-8 with its mark, because a spreadsheet program that does not
 * see it reads another alphabet. What such a program would run as a formula gets an apostrophe before it: titles and names
 * are what people typed.
 */
export const FOR_SPREADSHEETS = { bom: true, record_delimiter: 'windows', escape_formulas: true } as const;
