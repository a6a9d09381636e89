// Pages of a PDF as pixels, rendered in the browser. It is a chunk of its own,
// fetched with the first PDF that is brought.
import { getDocument, PDFWorker, type PDFDocumentProxy } from 'pdfjs-dist';
import workerAddress from 'pdfjs-dist/build/pdf.worker.min.mjs?url';
import { EngineError } from './errors';

/** Points of a PDF in a millimetre. */
const POINTS_PER_MM = 72 / 25.4;

/** A page rendered. */
export interface PageShot {
  pixels: ImageData;
  /** Pixels of it in a millimetre of the paper. */
  perMM: number;
}

export interface PDFPages {
  count: number;
  /** One page, counted from 1, at a long side in px, on white. */
  render(page: number, longSide: number): Promise<PageShot>;
  close(): void;
}

/** Larger files are no proofs, bytes. */
const MOST_BYTES = 100e6;

/** Reads a PDF; one that cannot be read is refused in words. */
export async function openPDF(file: Blob): Promise<PDFPages> {
  if (file.size > MOST_BYTES) throw refused(`This PDF has ${Math.round(file.size / 1e6)} MB.`, 'Bring the page with the pin alone, or a picture of it.');
  const port = await startWorker();
  const worker = PDFWorker.create({ port });
  try {
    const data = new Uint8Array(await file.arrayBuffer());
    // The page's policy lets nothing be made code, and nothing be fetched from elsewhere.
    const doc = await getDocument({ data, worker, isEvalSupported: false, enableXfa: false, stopAtErrors: false }).promise;
    return pagesOf(doc, () => end(doc, worker, port));
  } catch (err) {
    end(undefined, worker, port);
    throw inWords(err);
  }
}

function end(doc: PDFDocumentProxy | undefined, worker: PDFWorker, port: Worker): void {
  void doc?.destroy();
  worker.destroy();
  port.terminate();
}

/** The worker's code, once fetched. */
let script: string | undefined;

/** From a blob, so that the page's policy binds it as it binds the engine's. */
async function startWorker(): Promise<Worker> {
  if (script) return new Worker(script, { type: 'module', name: 'pdf' });
  const response = await fetch(workerAddress);
  if (!response.ok) throw refused('The part of the page that reads PDFs could not be fetched.', 'Check the connection and try again.');
  script = URL.createObjectURL(new Blob([await response.text()], { type: 'text/javascript' }));
  return new Worker(script, { type: 'module', name: 'pdf' });
}

function pagesOf(doc: PDFDocumentProxy, close: () => void): PDFPages {
  return {
    count: doc.numPages,
    close,
    async render(number, longSide) {
      const page = await doc.getPage(number);
      const whole = page.getViewport({ scale: 1 });
      const scale = longSide / Math.max(whole.width, whole.height);
      const viewport = page.getViewport({ scale });
      const canvas = document.createElement('canvas');
      canvas.width = Math.max(1, Math.round(viewport.width));
      canvas.height = Math.max(1, Math.round(viewport.height));
      await page.render({ canvas, viewport, background: '#ffffff' }).promise;
      const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height);
      page.cleanup();
      if (!pixels) throw refused('This page could not be drawn.', 'Bring a picture of it instead.');
      return { pixels, perMM: scale * POINTS_PER_MM };
    },
  };
}

const refused = (what: string, todo: string) => new EngineError(what, todo, 'refused');

function inWords(err: unknown): EngineError {
  if (err instanceof EngineError) return err;
  const name = err instanceof Error ? err.name : '';
  if (name === 'PasswordException') return refused('This PDF is locked with a password.', 'Save it without one, or take a picture of the page.');
  return refused('This file could not be read as a PDF.', 'It may be cut short; ask for it again, or bring a picture of the page.');
}
