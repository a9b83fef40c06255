/** Our mark: a wheel held by two chocks. Decoration only; the name stands beside it or in its link. */
export function WheelMark({ size = 32 }: { size?: number }) {
  return (
    <svg viewBox="0 0 32 32" width={size} height={size} aria-hidden="true" focusable="false">
      <circle cx="16" cy="13.5" r="9" fill="none" stroke="currentColor" strokeWidth="4" />
      <circle cx="16" cy="13.5" r="2.5" fill="currentColor" />
      <path d="M0 29V17.5l11 11.5zM32 29V17.5L21 29z" fill="currentColor" />
    </svg>
  );
}
