/**
 * Gives this process a clock that can be put wrong while it runs: `new Date()` and `Date.now()` are off by so many
 * milliseconds, timers go on as before, as when the clock of a machine is set. Imported before anything that keeps `Date`.
 */
let offMs = 0;
const Real = globalThis.Date;

export const setClockOff = (ms: number): void => {
  offMs = ms;
};

globalThis.Date = new Proxy(Real, {
  construct: (target, args: unknown[], newTarget) =>
    Reflect.construct(target, args.length === 0 ? [Real.now() + offMs] : args, newTarget) as object,
  apply: () => new Real(Real.now() + offMs).toString(),
  get: (target, name, receiver) =>
    name === 'now' ? () => Real.now() + offMs : (Reflect.get(target, name, receiver) as unknown),
});
