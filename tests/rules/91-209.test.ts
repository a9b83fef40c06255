/**
 * 14 CFR 91.209(a)(1) and (b). Source: the eCFR of 3 September 2026 in the stored copy github.com/Lyutenant/FAR-AIM.
 * That a failed system counts as equipped until it is deactivated and placarded is our strict reading.
 */
import { describe, expect, it } from 'vitest';
import { checkAnticollisionLit, demandsOf91209 } from '../../lib/rules/part-91/91-209-aircraft-lights';
import { deferralOf, olderTrainer, trainer, useOf, withBroken } from '../fixtures/aircraft';

describe('(a)(1) position lights from sunset to sunrise', () => {
  it('are asked for after sunset although it is still day', () => {
    const dusk = useOf({ light: 'day', betweenSunsetAndSunrise: true });
    expect(demandsOf91209(trainer(), dusk)).toMatchObject([
      { function: 'position-lights', count: 3, cite: '14cfr91.209(a)(1)' },
    ]);
  });
  it('not between sunrise and sunset', () => {
    expect(demandsOf91209(trainer(), useOf())).toEqual([]);
  });
});

describe('(b) an installed anticollision light must be lit', () => {
  const dead = (deferral: Parameters<typeof withBroken>[2] = {}) =>
    checkAnticollisionLit(withBroken(olderTrainer(), 'anticollision-lights', deferral));
  it('says nothing while it works', () => expect(checkAnticollisionLit(olderTrainer())).toEqual([]));
  it('bars a dead one, even where no paragraph asks for the system by day', () => {
    expect(dead()).toMatchObject([{ effect: 'bars', cite: '14cfr91.209(b)' }]);
  });
  it('rests when it is deactivated and placarded', () => {
    expect(dead({ deferral: deferralOf() })).toEqual([]);
  });
  it.each([
    ['without the placard', deferralOf({ placardPlaced: false })],
    ['removed without the record', deferralOf({ method: 'removed' })],
    ['deactivated by maintenance without the record', deferralOf({ deactivationIsMaintenance: true })],
  ])('bars %s', (_why, deferral) => expect(dead({ deferral })).toHaveLength(1));
  it('rests when it is removed and recorded', () => {
    expect(dead({ deferral: deferralOf({ method: 'removed', maintenanceRecordSigned: true }) })).toEqual([]);
  });
});
