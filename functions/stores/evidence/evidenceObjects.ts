/** The part of an object store that evidence needs. */
export interface EvidenceObjects {
  put(
    key: string,
    bytes: Uint8Array,
    options: { readonly contentType: string; readonly ifAbsent?: boolean },
  ): Promise<{ readonly written: boolean }>;
  get(key: string): Promise<{ readonly bytes: Uint8Array } | null>;
  head(key: string): Promise<{ readonly writtenAt?: string } | null>;
}
