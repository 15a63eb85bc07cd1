const MILLIMETRE = 72 / 25.4;

/** An A4 sheet of 24 labels, 3 beside each other and 8 below each other: 70 x 37 mm. */
const COLUMNS = 3;
const ROWS = 8;

export const LABELS_PER_SHEET = COLUMNS * ROWS;

const WIDTH = 70 * MILLIMETRE;
const HEIGHT = (297 / ROWS) * MILLIMETRE;
/** What printers leave white at the edge of the paper, and what a sheet may lie askew. */
export const MARGIN = 5 * MILLIMETRE;

export interface LabelPlace {
  /** From 0. */
  readonly page: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Where the label at an index (from 0) stands, in points, when the first is put at `start` (from 1). */
export function labelPlace(index: number, start: number): LabelPlace {
  const at = index + start - 1;
  const onPage = at % LABELS_PER_SHEET;
  return {
    page: Math.floor(at / LABELS_PER_SHEET),
    left: (onPage % COLUMNS) * WIDTH,
    top: Math.floor(onPage / COLUMNS) * HEIGHT,
    width: WIDTH,
    height: HEIGHT,
  };
}
