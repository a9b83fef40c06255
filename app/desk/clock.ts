export { clocksWithSeconds, clockWithSeconds } from '@/app/_ui/clock';
