// What the page and the worker say to each other.
import type { Failure, Header, Part } from './wire.gen';

/** From the page to the worker. */
export type ToWorker =
  | { type: 'start'; module: WebAssembly.Module }
  | { type: 'call'; id: number; name: string; ask: string; bytes: Uint8Array | null }
  /** Decode what is still a file, then make the call with the pixels. */
  | { type: 'open'; id: number; pictures: Picture[]; ask: OpenPlan }
  | { type: 'stop'; id: number };

/** From the worker to the page. */
export type FromWorker =
  | { type: 'ready' }
  | { type: 'progress'; id: number; share: number; doing: string }
  | { type: 'answer'; id: number; json: string; bytes?: Uint8Array<ArrayBuffer> }
  | { type: 'failure'; id: number; failure: Failure }
  | { type: 'ended'; why: string };

/** An open request before the pixels say what they turned out to be. */
export interface OpenPlan {
  id: string;
  fileName: string;
  ground: 'auto' | 'clear' | 'paper' | 'none';
  finest: number;
  part: Part;
}

/** One picture to open: a raster file, or the pixels of an SVG, which only the page can draw. */
export type Picture = { name: string; header: Header } & ({ file: Blob } | { pixels: Pixels });

/** Pixels of a drawing at the working size: RGBA, straight alpha. */
export interface Pixels {
  w: number;
  h: number;
  space: 'srgb' | 'display-p3';
  bytes: Uint8Array<ArrayBuffer>;
}
