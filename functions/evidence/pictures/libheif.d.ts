/** The part of libheif's JavaScript that is used here; the package describes only the C functions beneath. */
declare module 'libheif-js/libheif-wasm/libheif-bundle.mjs' {
  interface HeifImage {
    get_width(): number;
    get_height(): number;
    is_primary(): boolean;
    display(
      into: { data: Uint8ClampedArray; width: number; height: number },
      done: (drawn: { data: Uint8ClampedArray } | null) => void,
    ): void;
  }
  interface Libheif {
    HeifDecoder: new () => { decode(bytes: Uint8Array): HeifImage[] };
  }
  export default function open(): Promise<Libheif> | Libheif;
}
