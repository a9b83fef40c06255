/**
 * The rules keep what they counted of an aircraft beside its facts, in a WeakMap. Here the same facts meet thousands of mutants, and
 * what one of them counted must not be found by the next: so each run begins with all of it forgotten.
 */

let round = 0;

export function forget() {
  round += 1;
}

export class ForgetfulWeakMap {
  #kept = new WeakMap();
  #round = round;

  #now() {
    if (this.#round !== round) {
      this.#kept = new WeakMap();
      this.#round = round;
    }
    return this.#kept;
  }

  get(key) {
    return this.#now().get(key);
  }

  has(key) {
    return this.#now().has(key);
  }

  set(key, value) {
    this.#now().set(key, value);
    return this;
  }

  delete(key) {
    return this.#now().delete(key);
  }
}
