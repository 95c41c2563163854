/** Hosts, as origins, that a page may speak to besides its own. None of them is there on a machine of its own. */
export interface OtherHosts {
  /** Where photos are sent to and shown from. */
  readonly photos?: string | null;
  /** Whom the page asks for a sign-in's tokens. */
  readonly signIn?: readonly string[];
  /** Where the map's streets come from. */
  readonly streets?: string | null;
}

const sources = (...given: readonly (string | null | undefined)[]): string =>
  given.filter((one) => one !== null && one !== undefined).join(' ');

/**
 * What a page may load, run and ask (Content Security Policy Level 3): its own files and these hosts. Pages carry no script
 * and no style inside. A picture that a phone has just taken is shown from memory (`blob:`).
 */
export const contentPolicy = ({ photos, signIn = [], streets }: OtherHosts = {}): string =>
  [
    "default-src 'none'",
    "script-src 'self'",
    "style-src 'self'",
    "font-src 'self'",
    "manifest-src 'self'",
    "worker-src 'self'",
    `img-src ${sources("'self'", 'data:', 'blob:', photos, streets)}`,
    `connect-src ${sources("'self'", photos, ...signIn)}`,
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join('; ');

/** The policy of what is no page, whatever a browser takes it for. */
export const dataPolicy = "default-src 'none'; frame-ancestors 'none'";

/**
 * What stands beside the policy on every answer, here as in a deployment; over TLS comes the promise to stay with it.
 * A crew's form asks where it stands and takes photos; nothing else here needs a device.
 */
export const pageHeaders = {
  'x-content-type-options': 'nosniff',
  'x-frame-options': 'DENY',
  'referrer-policy': 'same-origin',
  'cross-origin-opener-policy': 'same-origin',
  'permissions-policy': 'camera=(self), geolocation=(self), microphone=(), payment=(), usb=()',
} as const;

/** For so long a browser asks over TLS alone. */
export const TLS_ONLY_DAYS = 365;
