const uuid = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/;

/**
 * The name of an outage in every feed, the same for ever: `urn:uuid:` (RFC 9562 §4) with the id that the strike or the
 * outage was recorded under. An id of another kind, which nothing recorded here has, becomes a tag URI (RFC 4151) of a
 * domain that nobody can own (RFC 2606), so that it is a URI all the same.
 */
export const outageUri = (outageId: string): string =>
  uuid.test(outageId) ? `urn:uuid:${outageId}` : `tag:outage.invalid,2026:${encodeURIComponent(outageId)}`;
