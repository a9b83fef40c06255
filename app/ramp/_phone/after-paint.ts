/**
 * Resolves once the screen has shown what a press changes at once (the pressed button, a mark), so that drawing a whole new
 * place does not hold that up: on a slow phone a press is answered before the next place is drawn.
 */
export const afterPaint = (): Promise<void> =>
  document.hidden
    ? Promise.resolve()
    : new Promise((resolve) => {
        requestAnimationFrame(() => setTimeout(resolve));
      });
