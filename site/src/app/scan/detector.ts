/**
 * The browser's own reader of codes (Shape Detection API, "Accelerated Shape Detection in Images", W3C community draft),
 * where it has one: Chrome and Edge on Android and macOS do; Safari and Firefox, by their documentation, do not.
 */
export interface Detector {
  detect(source: CanvasImageSource): Promise<readonly { readonly rawValue: string }[]>;
}
interface DetectorClass {
  new (options: { readonly formats: readonly string[] }): Detector;
  getSupportedFormats(): Promise<readonly string[]>;
}

/** What stands on tags and on parts' boxes. */
const wanted = ['qr_code', 'data_matrix', 'code_128', 'code_39', 'ean_13', 'upc_a', 'aztec', 'pdf417'];

const detectorClass = (): DetectorClass | undefined =>
  (globalThis as { readonly BarcodeDetector?: DetectorClass }).BarcodeDetector;

/** Whether it is worth offering; asks nobody for the camera. */
export const mayScan = (): boolean =>
  detectorClass() !== undefined &&
  typeof (navigator as { readonly mediaDevices?: Partial<MediaDevices> }).mediaDevices?.getUserMedia ===
    'function';

/** A reader for the kinds of code that this browser knows and tags have; null where it knows none of them. */
export async function detector(): Promise<Detector | null> {
  const Reader = detectorClass();
  if (!Reader) return null;
  const known = await Reader.getSupportedFormats();
  const formats = wanted.filter((format) => known.includes(format));
  return formats.length === 0 ? null : new Reader({ formats });
}
