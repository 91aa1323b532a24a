import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** A page as it is printed: its pixels, and each piece of text with where it stands, in points from the bottom left. */
export interface PrintedPage {
  width: number;
  height: number;
  pixels: { data: Uint8ClampedArray; width: number; height: number };
  texts: { text: string; x: number; y: number; width: number; size: number }[];
  png(): Buffer;
}

interface Canvas {
  getContext(kind: '2d'): {
    getImageData(x: number, y: number, width: number, height: number): PrintedPage['pixels'];
  };
  toBuffer(type: 'image/png'): Buffer;
}

/** The library types its canvas as a browser’s; in Node it makes another. */
interface CanvasFactory {
  create(width: number, height: number): { canvas: Canvas };
}

/** Draws a PDF with another library than wrote it, so many pixels to a point. */
export const renderPdf = async (content: string, scale = 2): Promise<PrintedPage[]> => {
  const task = getDocument({ data: new Uint8Array(Buffer.from(content, 'latin1')), verbosity: 0 });
  const document = await task.promise;
  const pages: PrintedPage[] = [];
  for (let no = 1; no <= document.numPages; no++) {
    const page = await document.getPage(no);
    const viewport = page.getViewport({ scale });
    const size = { width: Math.ceil(viewport.width), height: Math.ceil(viewport.height) };
    const { canvas } = (document.canvasFactory as CanvasFactory).create(size.width, size.height);
    await page.render({ canvas, viewport }).promise;
    const { items } = await page.getTextContent();
    pages.push({
      width: viewport.width / scale,
      height: viewport.height / scale,
      pixels: canvas.getContext('2d').getImageData(0, 0, size.width, size.height),
      texts: items.flatMap((item) =>
        'str' in item && item.str.trim() !== ''
          ? [
              {
                text: item.str,
                x: Number(item.transform[4]),
                y: Number(item.transform[5]),
                width: item.width,
                size: Number(item.transform[0]),
              },
            ]
          : [],
      ),
      png: () => canvas.toBuffer('image/png'),
    });
  }
  await task.destroy();
  return pages;
};
