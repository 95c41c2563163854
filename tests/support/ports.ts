/**
 * The ports that tests listen on, each its own, since two files run at once. All lie below the range that systems hand
 * out to outgoing connections (32768 and up on Linux, 49152 and up by RFC 6335): a port in it may be taken by anyone.
 * `PORTS_SHIFT` moves all of them, up to 3000, so that two runs on one machine do not meet.
 */
const usual = {
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
  keyboard: 27_148,
  stock: 27_146,
  models: 27_147,
  atWork: 28_390,
  timing: 28_391,
  finding: 28_392,
  procedure: 28_330,
  damage: 28_340,
  dispatch: 28_360,
  dispatchLocal: 28_361,
  offlineApp: 28_380,
  offlineQueue: 28_381,
  offlineQueueLine: 28_382,
  offlineDrafts: 28_385,
  offlineHands: 28_387,
  offlineHandsLine: 28_388,
  offlineKinds: 28_393,
  offlineKindsLine: 28_394,
  firstWords: 28_386,
  benchField: 28_383,
  benchQueue: 28_384,
  night: 27_169,
  smoke: 29_220,
  toPublic: 29_230,
} as const;

const shift = Number(process.env['PORTS_SHIFT'] ?? 0);
if (!Number.isInteger(shift) || shift < 0 || shift > 3000)
  throw new Error(`PORTS_SHIFT is a whole number from 0 to 3000, not ${String(process.env['PORTS_SHIFT'])}`);

export const ports = Object.fromEntries(
  Object.entries(usual).map(([name, port]) => [name, port + shift]),
) as Record<keyof typeof usual, number>;
