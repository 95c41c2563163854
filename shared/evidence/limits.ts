/** One photo or document, bytes: twice what a phone of 48 megapixels makes. */
export const MOST_EXHIBIT_BYTES = 100_000_000;
/** One photo or document that is read for its copy, bytes: what a phone makes, with room. */
export const MOST_DISPLAYED_BYTES = 25_000_000;
/** A picture of more pixels is not unpacked: 100 megapixels are twenty times what a packet can show. */
export const MOST_PIXELS = 100_000_000;
/** Phones make up to 48 megapixels of HEIC. Each takes four bytes here, and as many again while it is unpacked. */
export const MOST_HEIF_PIXELS = 52_000_000;
/** Twelve megapixels take one to two seconds, 48 up to 17 on a busy machine; what takes longer is broken, or meant to harm. */
export const PICTURE_LIMIT_MS = 40_000;
