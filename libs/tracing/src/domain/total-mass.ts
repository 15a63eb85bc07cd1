import { formatQuantity, quantity, sum } from '#lib/measure';

/** The balance of a quantity of goods, as decimal texts. */
export interface Mass {
  readonly received: string;
  readonly onHand: string;
  readonly used: string;
  readonly wasted: string;
  readonly returned: string;
  readonly countDifference: string;
  readonly balanced: boolean;
}

/** The layers of a lot together; balanced when the sums are, and every layer is. */
export function totalMass(layers: readonly Mass[]): Mass {
  const total = (of: (mass: Mass) => string) => sum(layers.map((mass) => quantity(of(mass))));
  const received = total((m) => m.received);
  const onHand = total((m) => m.onHand);
  const used = total((m) => m.used);
  const wasted = total((m) => m.wasted);
  const returned = total((m) => m.returned);
  const countDifference = total((m) => m.countDifference);
  const whole = onHand + used + wasted + returned + countDifference;
  return {
    received: formatQuantity(received),
    onHand: formatQuantity(onHand),
    used: formatQuantity(used),
    wasted: formatQuantity(wasted),
    returned: formatQuantity(returned),
    countDifference: formatQuantity(countDifference),
    balanced: received === whole && layers.every((mass) => mass.balanced),
  };
}
