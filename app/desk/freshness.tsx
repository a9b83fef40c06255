export { FreshMark, StaysFresh, useIsLost } from '@/app/_ui/freshness';
