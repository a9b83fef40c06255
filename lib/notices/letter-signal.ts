/**
 * Tells the sender of this process that an operator has a letter to send. Kept on globalThis because the framework loads
 * the verbs and the sender as separate bundles. Where no sender runs (tests, scripts, letters off) it does nothing.
 */
const holder = globalThis as typeof globalThis & { wheelchockLetters?: LetterSender };

export interface LetterSender {
  /** Look at this operator's letters as soon as may be. */
  wake(operatorId: string): void;
  /** Takes no further letter and resolves when the one under way is done with. */
  stop(): Promise<void>;
}

export const letterSender = (): LetterSender | undefined => holder.wheelchockLetters;

export function setLetterSender(sender: LetterSender | undefined): void {
  holder.wheelchockLetters = sender;
}

/**
 * May be called inside the transaction that writes the letter: the sender stands in line behind it for the operator's
 * write lock, so it looks when the letter is there, or finds nothing when the transaction failed.
 */
export const wakeLetterSender = (operatorId: string): void => holder.wheelchockLetters?.wake(operatorId);
