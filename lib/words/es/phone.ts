import { PHONE, spanish } from './make';

/** Spanish for the ramp and for whatever stands on every page. Small, because a phone keeps it. */
export default spanish(PHONE);
