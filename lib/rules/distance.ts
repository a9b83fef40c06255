/**
 * How far two places lie apart, for limits in nautical miles (91.207(f)(3): "a 50-nautical mile radius"). Great circle
 * on a sphere of mean radius 6371.0088 km; a nautical mile is 1.852 km. Off by half a percent at most.
 */
import type { Point } from './sun';

const EARTH_RADIUS_NM = 6371.0088 / 1.852;

const radians = (degrees: number): number => (degrees * Math.PI) / 180;

/** Nautical miles from `a` to `b` along the great circle (haversine). */
export function nauticalMilesBetween(a: Point, b: Point): number {
  const latitude = Math.sin(radians(b.latitudeDeg - a.latitudeDeg) / 2);
  const longitude = Math.sin(radians(b.longitudeDeg - a.longitudeDeg) / 2);
  const chord =
    latitude ** 2 + Math.cos(radians(a.latitudeDeg)) * Math.cos(radians(b.latitudeDeg)) * longitude ** 2;
  return 2 * EARTH_RADIUS_NM * Math.asin(Math.min(1, Math.sqrt(chord)));
}
