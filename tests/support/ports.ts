/**
 * The ports that tests listen on, each its own, since two files run at once. All lie below the range that systems hand
 * out to outgoing connections (32768 and up on Linux, 49152 and up by RFC 6335): a port in it may be taken by anyone.
 */
export const ports = {
  crash: 27_112,
  storeAway: 27_113,
  evidence: 27_114,
  recordLoad: 27_115,
  start: 27_116,
  routeRoles: 27_117,
  wholeJob: 27_118,
  localRoutes: 27_119,
  killed: 27_120,
  network: 27_131,
  letter: 27_132,
  tightening: 27_133,
  desk: 27_134,
  rates: 27_135,
  outbox: 27_136,
  water: 27_137,
  deskMoney: 27_138,
  deskClaim: 27_139,
  flowTest: 27_140,
  deskLife: 27_141,
  issuing: 27_142,
  letters: 27_143,
  mainJob: 27_144,
  forms: 27_145,
  procedure: 28_330,
} as const;
