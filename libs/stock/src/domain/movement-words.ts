/** One side of a movement as it is told to people. */
export interface SideFacts {
  readonly account: string;
  readonly locationName: string | null;
  readonly opened: boolean;
  readonly supplierName: string;
  readonly visitedOn: string | null;
  readonly wasteReason: string | null;
}

/** Where goods came from or went, in words: 'Room 2, opened container', 'waste: expired'. */
export function sideInWords(side: SideFacts): string {
  switch (side.account) {
    case 'location':
      return side.opened
        ? `${side.locationName ?? ''}, opened container`
        : (side.locationName ?? '');
    case 'supplier':
      return side.supplierName;
    case 'return':
      return `returned to ${side.supplierName}`;
    case 'visit':
      return side.visitedOn === null ? 'visit' : `visit of ${side.visitedOn}`;
    case 'waste':
      return side.wasteReason === null ? 'waste' : `waste: ${side.wasteReason}`;
    case 'count':
      return 'count difference';
    default:
      throw new Error(`No account is called ${side.account}`);
  }
}

export interface KindFacts {
  readonly from: string;
  readonly to: string;
  readonly fromOpened: boolean;
  readonly toOpened: boolean;
  readonly reverses: boolean;
}

/** What happened, in a word. */
export function kindOfMovement(m: KindFacts): string {
  if (m.reverses) return 'reversal';
  if (m.from === 'location' && m.to === 'location') {
    return m.toOpened && !m.fromOpened ? 'opening' : 'move';
  }
  if (m.from === 'supplier') return 'receipt';
  if (m.from === 'count') return 'found at count';
  const away: Record<string, string> = {
    visit: 'use',
    waste: 'write-off',
    return: 'return',
    count: 'missing at count',
  };
  const word = away[m.to];
  if (word === undefined) throw new Error(`No movement goes from ${m.from} to ${m.to}`);
  return word;
}
