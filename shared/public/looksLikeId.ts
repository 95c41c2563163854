/**
 * Whether an id that is not in the inventory may stand on a public page. Whoever reports a strike types it freely, so it
 * may be anything, a name or a plate among it; what looks like a number painted on a barrel is shown, so that a crew can
 * tell the hydrant, and nothing else.
 */
export function looksLikeId(hydrantId: string): boolean {
  return (
    hydrantId.length <= 24 &&
    /^[\p{L}\p{N}\-_./# ]+$/u.test(hydrantId) &&
    /\p{N}/u.test(hydrantId) &&
    // Two words of letters are words, not a number.
    (hydrantId.match(/\p{L}{3,}/gu) ?? []).length < 2
  );
}
