/** Pages of a PDF as pictures, by a rasteriser that knows nothing of ours (PDFium). */
import { PDFiumLibrary } from '@hyzyla/pdfium';

export interface RasterPage {
  readonly width: number;
  readonly height: number;
  /** 0 white to 255 black. */
  darkness(x: number, y: number): number;
}

/** @param dots to the inch */
export async function rasterPages(bytes: Uint8Array, dots: number): Promise<readonly RasterPage[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(new Uint8Array(bytes));
  const pages: RasterPage[] = [];
  for (const page of document.pages()) {
    const { width, height, data } = await page.render({ scale: dots / 72, colorSpace: 'Gray' });
    const kept = new Uint8Array(data);
    pages.push({ width, height, darkness: (x, y) => 255 - (kept[y * width + x] ?? 255) });
  }
  document.destroy();
  library.destroy();
  return pages;
}
