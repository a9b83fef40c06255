/**
 * 14 CFR 47.15: the registration number of a US aircraft, as far as its form goes (from memory, no copy read). After the letter N at most
 * five symbols: one to five digits; one to four digits and a letter; one to three digits and two letters. No I and no O, which read like
 * digits.
 *
 * The paragraph also says that the first digit is never zero. That is not held against anybody here: marks of invented aircraft begin N0
 * for that very reason.
 */
const FORM = /^N(?:\d{1,5}|\d{1,4}[A-HJ-NP-Z]|\d{1,3}[A-HJ-NP-Z]{2})$/;

/** Whether the mark, in capitals and without spaces, has the form. */
export const isRegistrationNumber = (mark: string): boolean => FORM.test(mark);
