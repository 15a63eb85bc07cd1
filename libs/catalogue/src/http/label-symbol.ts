import type { RawOptions } from 'bwip-js/node';

/** The dark modules of a symbol, row by row; its quiet zone is not part of it. */
export interface SymbolMatrix {
  readonly columns: number;
  readonly rows: number;
  readonly isDark: (column: number, row: number) => boolean;
}

const SEPARATOR = '\u001d';
/** How the writer is told FNC1, which marks GS1 data and separates; no value of GS1 holds '^'. */
const FNC1 = '^FNC1';

/** A GS1 DataMatrix (ISO/IEC 16022, FNC1 in the first position) of an element string. */
export async function dataMatrix(elementString: string): Promise<SymbolMatrix> {
  // Two megabytes of code that most days nobody needs.
  const { default: writer } = await import('bwip-js/node');
  const options: RawOptions & { readonly parsefnc: boolean } = {
    bcid: 'datamatrix',
    text: FNC1 + elementString.replaceAll(SEPARATOR, FNC1),
    parsefnc: true,
  };
  const [symbol] = writer.raw(options);
  if (!symbol || !('pixs' in symbol)) throw new Error('The writer made no matrix');
  const { pixs, pixx, pixy } = symbol;
  return {
    columns: pixx,
    rows: pixy,
    isDark: (column, row) => pixs[row * pixx + column] === 1,
  };
}
