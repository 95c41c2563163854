/** The store did not answer, or not in time. Nothing is known to be lost; the same request may be sent again. */
export class StoreUnavailable extends Error {
  override readonly name = 'StoreUnavailable';
}
