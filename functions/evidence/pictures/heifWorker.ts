import { parentPort } from 'node:worker_threads';
import open from 'libheif-js/libheif-wasm/libheif-bundle.mjs';

/** One file and the most pixels that it may unpack to; one message back. Runs in a thread, so that it can be killed. */
export interface HeifRequest {
  readonly bytes: Uint8Array;
  readonly mostPixels: number;
}
export type HeifReply =
  | {
      readonly ok: true;
      readonly rgba: Uint8ClampedArray;
      readonly widthPx: number;
      readonly heightPx: number;
    }
  | { readonly ok: false; readonly reason: 'corrupt' | 'too-large' };

async function unpack({ bytes, mostPixels }: HeifRequest): Promise<HeifReply> {
  const { HeifDecoder } = await open();
  const images = new HeifDecoder().decode(bytes);
  const image = images.find((each) => each.is_primary()) ?? images[0];
  if (!image) return { ok: false, reason: 'corrupt' };
  const [width, height] = [image.get_width(), image.get_height()];
  if (!(width > 0 && height > 0)) return { ok: false, reason: 'corrupt' };
  if (width * height > mostPixels) return { ok: false, reason: 'too-large' };
  const into = { data: new Uint8ClampedArray(width * height * 4), width, height };
  const drawn = await new Promise<{ data: Uint8ClampedArray } | null>((resolve) => {
    image.display(into, resolve);
  });
  return drawn
    ? { ok: true, rgba: drawn.data, widthPx: width, heightPx: height }
    : { ok: false, reason: 'corrupt' };
}

parentPort?.once('message', (request: HeifRequest) => {
  void unpack(request).then((reply) => {
    parentPort?.postMessage(reply, reply.ok ? [reply.rgba.buffer as ArrayBuffer] : []);
  });
});
