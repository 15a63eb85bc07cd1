import { prepareZXingModule, type ReadResult, readBarcodes } from 'zxing-wasm/reader';
import wasm from 'zxing-wasm/reader/zxing_reader.wasm?url';

// From our own service; the library's own default would be somebody else's server.
prepareZXingModule({ overrides: { locateFile: () => wasm } });

const FORMATS = ['DataMatrix', 'QRCode', 'Code128'] as const;
/** Between two looks: the tablet has other things to do as well. */
const PAUSE = 120;

const GS1_MARKS: Readonly<Record<string, string>> = {
  ...{ DataMatrix: ']d2', QRCode: ']Q3', Code128: ']C1' },
};

/** The same as a hand scanner would send: GS1 data with the mark of its symbol. */
function asScanned({ text, format, contentType }: ReadResult): string {
  return contentType === 'GS1' ? (GS1_MARKS[format] ?? '') + text : text;
}

/** Looks at the picture again and again until a symbol is in it; undefined when it was stopped. */
export async function readFrames(
  video: HTMLVideoElement,
  stop: AbortSignal,
): Promise<string | undefined> {
  const canvas = document.createElement('canvas');
  const pencil = canvas.getContext('2d', { willReadFrequently: true });
  if (!pencil) throw new Error('This browser draws no pictures');
  while (!stop.aborted) {
    const { videoWidth: width, videoHeight: height } = video;
    if (width > 0 && height > 0) {
      canvas.width = width;
      canvas.height = height;
      pencil.drawImage(video, 0, 0, width, height);
      const image = pencil.getImageData(0, 0, width, height);
      const options = { formats: [...FORMATS], maxNumberOfSymbols: 1, textMode: 'Plain' as const };
      const [found] = await readBarcodes(image, options);
      if (found?.isValid && !stop.aborted) return asScanned(found);
    }
    await new Promise((resolve) => window.setTimeout(resolve, PAUSE));
  }
  return undefined;
}
