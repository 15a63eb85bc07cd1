import { describe, expect, it } from '@jest/globals';
import fc from 'fast-check';
import {
  arrivalOf,
  type LineNow,
  type OrderNow,
  type OrderStep,
  outstandingOf,
  settled,
  surplusOf,
  take,
} from './order-life.js';

/** Ten lines beside the machine: what was wanted, what came, what was given up, and how far it is. */
interface Model {
  state: OrderNow['state'];
  wanted: Map<string, number>;
  came: Map<string, number>;
  givenUp: Map<string, number>;
}

class Real {
  order: OrderNow = { state: 'draft', lines: [{ id: 'a', packs: 3, cancelled: 0, received: 0 }] };

  /** Deliveries are booked elsewhere: only what came changes, and then the order is settled. */
  arrive(id: string, packs: number): void {
    const lines = this.order.lines.map((line) =>
      line.id === id ? { ...line, received: Math.max(0, line.received + packs) } : line,
    );
    this.order = settled({ ...this.order, lines }).order;
  }
}

const left = (m: Model, id: string) =>
  Math.max(0, (m.wanted.get(id) ?? 0) - (m.givenUp.get(id) ?? 0) - (m.came.get(id) ?? 0));
const waits = (m: Model) => [...m.wanted.keys()].some((id) => left(m, id) > 0);
const settle = (m: Model) => {
  if (m.state === 'sent' && !waits(m)) m.state = 'closed';
  else if (m.state === 'closed' && waits(m)) m.state = 'sent';
};

function expectAlike(m: Model, { order }: Real): void {
  expect(order.state).toBe(m.state);
  for (const line of order.lines) {
    expect(outstandingOf(line)).toBe(left(m, line.id));
    // Ordered = received + will not come + outstanding, less what came beyond it.
    expect(line.packs).toBe(line.received + line.cancelled + outstandingOf(line) - surplusOf(line));
    expect(Math.min(outstandingOf(line), surplusOf(line))).toBe(0);
  }
  if (order.state === 'closed') expect(waits(m)).toBe(false);
  if (order.state === 'sent') expect(waits(m)).toBe(true);
}

class Step implements fc.Command<Model, Real> {
  constructor(
    readonly step: OrderStep,
    readonly from: readonly OrderNow['state'][],
    readonly apply: (m: Model) => void,
  ) {}

  check(): boolean {
    return true;
  }

  run(m: Model, real: Real): void {
    const before = structuredClone(real.order);
    const result = take(real.order, this.step);
    expect(real.order).toEqual(before);
    const allowed = this.from.includes(m.state) && this.fits(m);
    expect(result.ok).toBe(allowed);
    if (!result.ok) {
      expect(result.why).toMatch(/^[A-Z].+\.$/);
      return;
    }
    real.order = result.order;
    this.apply(m);
    expectAlike(m, real);
  }

  private fits(m: Model): boolean {
    if (this.step.do !== 'answer') return true;
    const { willNotCome } = this.step;
    const ids = willNotCome.map(({ lineId }) => lineId);
    return (
      new Set(ids).size === ids.length &&
      willNotCome.every(({ lineId, packs }) => m.wanted.has(lineId) && packs <= left(m, lineId))
    );
  }

  toString(): string {
    return JSON.stringify(this.step);
  }
}

class Arrive implements fc.Command<Model, Real> {
  constructor(
    readonly id: string,
    readonly packs: number,
  ) {}

  /** Only orders that were sent get deliveries; a delivery that is gone may reopen a closed one. */
  check(m: Readonly<Model>): boolean {
    const came = m.came.get(this.id) ?? 0;
    if (!m.wanted.has(this.id)) return false;
    return this.packs > 0
      ? m.state === 'sent'
      : came > 0 && (m.state === 'sent' || m.state === 'closed');
  }

  run(m: Model, real: Real): void {
    const came = m.came.get(this.id) ?? 0;
    m.came.set(this.id, Math.max(0, came + this.packs));
    settle(m);
    real.arrive(this.id, this.packs);
    expectAlike(m, real);
  }

  toString(): string {
    return `arrive ${this.packs} of ${this.id}`;
  }
}

const ids = fc.constantFrom('a', 'b', 'c');
const packs = fc.integer({ min: 1, max: 4 });

const commands = [
  fc.uniqueArray(fc.record({ id: ids, packs }), { selector: ({ id }) => id, minLength: 1 }).map(
    (lines) =>
      new Step({ do: 'change', lines }, ['draft', 'approved'], (m) => {
        m.wanted = new Map(lines.map((line) => [line.id, line.packs]));
        m.came = new Map();
        m.givenUp = new Map();
        m.state = 'draft';
      }),
  ),
  fc.constantFrom(
    new Step({ do: 'approve' }, ['draft'], (m) => {
      m.state = 'approved';
    }),
    new Step({ do: 'approve' }, ['draft'], (m) => {
      m.state = 'approved';
    }),
    new Step({ do: 'withdraw approval' }, ['approved'], (m) => {
      m.state = 'draft';
    }),
    new Step({ do: 'send' }, ['approved'], (m) => {
      m.state = 'sent';
    }),
    new Step({ do: 'chase' }, ['sent'], () => undefined),
    new Step({ do: 'cancel' }, ['draft', 'approved'], (m) => {
      m.state = 'cancelled';
    }),
    new Step({ do: 'close' }, ['sent'], (m) => {
      for (const id of m.wanted.keys()) m.givenUp.set(id, (m.givenUp.get(id) ?? 0) + left(m, id));
      m.state = 'closed';
    }),
  ),
  fc.array(fc.record({ lineId: ids, packs }), { maxLength: 3 }).map(
    (willNotCome) =>
      new Step({ do: 'answer', willNotCome }, ['sent'], (m) => {
        for (const { lineId, packs: n } of willNotCome) {
          m.givenUp.set(lineId, (m.givenUp.get(lineId) ?? 0) + n);
        }
        settle(m);
      }),
  ),
  fc
    .tuple(
      ids,
      fc.integer({ min: -4, max: 5 }).filter((n) => n !== 0),
    )
    .map(([id, n]) => new Arrive(id, n)),
];

describe('the life of an order', () => {
  it('is what the model says, whatever people and deliveries do', () => {
    let closed = 0;
    fc.assert(
      fc.property(fc.commands(commands, { maxCommands: 40, size: 'max' }), (steps) => {
        const model: Model = {
          ...{ state: 'draft', wanted: new Map([['a', 3]]), came: new Map(), givenUp: new Map() },
        };
        const real = new Real();
        fc.modelRun(() => ({ model, real }), steps);
        if (real.order.state === 'closed') closed += 1;
      }),
      { numRuns: 300, seed: 20_261_127 },
    );
    // The walks do get to the end of an order.
    expect(closed).toBeGreaterThan(5);
  });

  const line = (changes: Partial<LineNow>): LineNow => ({
    ...{ id: 'a', packs: 5, cancelled: 0, received: 0, ...changes },
  });

  it('says how much of an order came', () => {
    expect(arrivalOf([line({})])).toBe('nothing yet');
    expect(arrivalOf([line({ received: 2 }), line({ id: 'b' })])).toBe('in part');
    expect(arrivalOf([line({ received: 2, cancelled: 3 })])).toBe('in full');
  });

  it('says why something cannot be done', () => {
    const why = (state: OrderNow['state'], step: OrderStep) => {
      const result = take({ state, lines: [line({})] }, step);
      return result.ok ? 'done' : result.why;
    };
    expect(why('draft', { do: 'send' })).toBe(
      'The order cannot be sent. It is a draft that nobody approved yet.',
    );
    expect(why('sent', { do: 'cancel' })).toBe(
      'The order cannot be cancelled. It was sent already; say what the supplier answered, or close it.',
    );
    expect(why('sent', { do: 'answer', willNotCome: [{ lineId: 'a', packs: 6 }] })).toBe(
      'Only 5 of this line are outstanding, so 6 cannot fail to come.',
    );
    expect(take({ state: 'draft', lines: [] }, { do: 'approve' })).toMatchObject({
      ...{ ok: false, field: 'lines' },
    });
  });
});
