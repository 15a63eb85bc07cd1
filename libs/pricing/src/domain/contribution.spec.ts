import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import { money, moneyFromMicro, quantity, quantityFromMicro } from '#lib/measure';
import {
  breakEven,
  breakEvenOfMix,
  contributionOf,
  marginOfSafety,
  specialPrice,
} from './contribution.js';
import { rankByScarceHours } from './scarce-time.js';

// Numbers of OpenStax, Principles of Accounting, Volume 2: Managerial Accounting (2019).

describe('contribution and break-even', () => {
  it('of one price (ch. 3.1: 100 less 20, 500 units, 23,000 fixed)', () => {
    const sale = { price: money('100'), variable: money('20'), fixed: money('23000') };
    expect(contributionOf({ ...sale, units: quantity('500') })).toEqual({
      unit: money('80'),
      ratio: quantity('0.8'),
      total: money('40000'),
      income: money('17000'),
    });
    const free = { price: money('0'), variable: money('5'), fixed: money('0') };
    expect(contributionOf({ ...free, units: quantity('2') })).toMatchObject({
      ratio: null,
      total: money('-10'),
    });
  });

  it('and target profit (ch. 3.2: 225 and 425 units)', () => {
    const sale = { price: money('100'), variable: money('20'), fixed: money('18000') };
    expect(breakEven(sale)).toEqual({
      units: quantity('225'),
      wholeUnits: 225n,
      revenue: money('22500'),
    });
    expect(breakEven({ ...sale, targetProfit: money('16000') })).toMatchObject({
      units: quantity('425'),
      revenue: money('42500'),
    });
    const incomeAt = (units: string) => contributionOf({ ...sale, units: quantity(units) }).income;
    expect([incomeAt('175'), incomeAt('300')]).toEqual([money('-4000'), money('6000')]);
    expect(breakEven({ ...sale, variable: money('100') })).toBeNull();
  });

  it('of a mix of kinds (ch. 3.4: 5, 3 and 2 of each bundle, 145,000 fixed)', () => {
    const kind = (parts: bigint, price: string, variable: string) => ({
      parts,
      price: money(price),
      variable: money(variable),
    });
    const kinds = [kind(5n, '6.25', '3.25'), kind(3n, '7.75', '4.5'), kind(2n, '9.25', '6.25')];
    const mixed = breakEvenOfMix(kinds, money('145000'));
    expect(mixed?.bundleMargin).toBe(money('30.75'));
    expect(mixed?.units).toBe(quantity('4715.447154'));
    expect(mixed?.each).toEqual([23_577n, 14_146n, 9_431n]);
    const off = (mixed?.revenue ?? 0n) - money('344228');
    expect(off > -money('20') && off < money('20')).toBe(true);
    expect(breakEvenOfMix([kind(1n, '5', '5')], money('1'))).toBeNull();
  });

  it('with a margin of safety (ch. 3.5: 32 %)', () => {
    const sale = { price: money('90'), variable: money('40'), fixed: money('85000') };
    expect(marginOfSafety({ ...sale, units: quantity('2500') })).toMatchObject({
      breakEven: { units: quantity('1700'), revenue: money('153000') },
      margin: money('72000'),
      share: quantity('0.32'),
    });
    expect(marginOfSafety({ ...sale, price: money('1'), units: quantity('1') })).toBeNull();
  });

  it('a whole number of units that was rounded up always earns enough', () => {
    const amount = fc.bigInt({ min: 1n, max: 10n ** 12n }).map(moneyFromMicro);
    fc.assert(
      fc.property(amount, amount, amount, (unit, variable, fixed) => {
        const sale = { price: moneyFromMicro(unit + variable), variable, fixed };
        const whole = breakEven(sale)?.wholeUnits ?? 0n;
        expect(whole * unit >= fixed && (whole - 1n) * unit < fixed).toBe(true);
      }),
    );
  });
});

describe('a special price', () => {
  it('is taken above variable cost with free capacity (ch. 10.2, examination chairs)', () => {
    const variable = [money('750'), money('600'), money('300')];
    const offer = { price: money('1800'), variable, order: quantity('800') };
    expect(specialPrice({ ...offer, freeCapacity: quantity('1000') })).toEqual({
      variable: money('1650'),
      gainPerUnit: money('150'),
      gain: money('120000'),
      accept: true,
    });
    expect(specialPrice({ ...offer, freeCapacity: quantity('700') }).accept).toBe(false);
    const cheap = { ...offer, price: money('1650'), freeCapacity: quantity('1000') };
    expect(specialPrice(cheap).accept).toBe(false);
  });
});

describe('scarce hours', () => {
  const work = (name: string, price: string, variable: string, hours: string, demand: string) => ({
    name,
    price: money(price),
    variable: money(variable),
    hours: quantity(hours),
    demand: quantity(demand),
  });

  // Ch. 10.6. The book prints 48 and 192 for the bookcase; 175 - 130 is 45, so 180 an hour.
  it('go to what earns most an hour (ch. 10.6, corrected)', () => {
    const ranked = rankByScarceHours(quantity('80000'), [
      work('desk', '350', '165', '1', '60000'),
      work('chair', '200', '145', '0.5', '48000'),
      work('bookcase', '175', '130', '0.25', '40000'),
    ]);
    expect(ranked).toEqual([
      { name: 'desk', perHour: money('185'), made: quantity('60000') },
      { name: 'bookcase', perHour: money('180'), made: quantity('40000') },
      { name: 'chair', perHour: money('110'), made: quantity('20000') },
    ]);
  });

  it('are never overdrawn, and not spent on work that loses money', () => {
    const amount = fc.bigInt({ min: 0n, max: 10n ** 10n });
    const any = fc.record({
      name: fc.string(),
      price: amount.map(moneyFromMicro),
      variable: amount.map(moneyFromMicro),
      hours: amount.map((n) => quantityFromMicro(n + 1n)),
      demand: amount.map(quantityFromMicro),
    });
    fc.assert(
      fc.property(amount.map(quantityFromMicro), fc.array(any), (capacity, works) => {
        const ranked = rankByScarceHours(capacity, works);
        const pairs = ranked.map((each) => ({ each, of: works.find((w) => w.name === each.name) }));
        const named = new Set(works.map((w) => w.name)).size === works.length ? pairs : [];
        const used = named.reduce((sum, { each, of }) => sum + each.made * (of?.hours ?? 0n), 0n);
        expect(used <= capacity * 1_000_000n).toBe(true);
        for (const { each, of } of named) {
          if (of && of.price <= of.variable) expect(each.made).toBe(0n);
        }
      }),
    );
  });
});
