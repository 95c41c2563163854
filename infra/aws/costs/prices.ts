/** A price of the list, US dollars, with where it was read and when. */
export interface Price {
  readonly usd: number;
  /** What one costs that. */
  readonly per: string;
  readonly source: string;
}

/** Where the prices are of; other regions of the United States cost the same to a tenth more. */
export const priceRegion = 'us-east-1';
/** When they were last looked at. None could be read at Amazon's own address from where this was written. */
export const pricesReadOn = '2026-11-26';

const fromMemory = 'from memory; confirm';
const lists = {
  dynamodb: 'an article of July 2025 on the prices since the cut of 1 November 2024',
  estimator: 'AWS’s price list, as an open-source estimator’s tests record it',
  cloudwatch: 'aws.amazon.com/cloudwatch/pricing, a copy of May 2026',
} as const;

const price = (usd: number, per: string, source: string): Price => ({ usd, per, source });

/**
 * Every price that the bill uses, without free allowances and without volume discounts: what is paid is at most this.
 * Change one here and run `UPDATE_DOCS=1 npm run unit -- tests/docs`.
 */
export const prices = {
  tableWriteUnit: price(0.625e-6, 'write request unit', lists.dynamodb),
  tableReadUnit: price(0.125e-6, 'read request unit', lists.dynamodb),
  tableGb: price(0.25, 'GB and month in a table', lists.estimator),
  tableBackupGb: price(0.2, 'GB and month of point-in-time recovery', lists.estimator),
  objectPut: price(0.005e-3, 'PUT or LIST', lists.estimator),
  objectGet: price(0.0004e-3, 'GET', lists.estimator),
  objectGb: price(0.023, 'GB and month in S3 Standard', lists.estimator),
  functionCall: price(0.2e-6, 'call of a function', lists.estimator),
  functionArmGbSecond: price(0.0000133334, 'GB-second on arm64', lists.estimator),
  functionX86GbSecond: price(0.0000166667, 'GB-second on x86-64', lists.estimator),
  apiRequest: price(1e-6, 'request of the HTTP API', lists.estimator),
  edgeRequest: price(0.01e-4, 'HTTPS request at CloudFront (United States)', lists.estimator),
  edgeFunction: price(0.1e-6, 'call of a CloudFront function', fromMemory),
  edgeGb: price(0.085, 'GB from CloudFront (United States)', lists.estimator),
  alarmMetric: price(0.1, 'metric of an alarm and month', lists.cloudwatch),
  customMetric: price(0.3, 'metric that is counted from a log, and month', lists.cloudwatch),
  dashboard: price(3, 'dashboard and month', lists.cloudwatch),
  logGb: price(0.5, 'GB that is written to a log', lists.cloudwatch),
  key: price(1, 'key and month', lists.estimator),
  signature: price(0.15e-4, 'signature with an elliptic-curve key', lists.estimator),
  person: price(0.015, 'person who signs in, and month (Essentials; 10,000 are free)', fromMemory),
  mail: price(0.1e-3, 'mail through SES', fromMemory),
  text: price(0.0093, 'text to a telephone in the United States, with the carrier', fromMemory),
  event: price(1e-6, 'event of EventBridge or call of its scheduler', fromMemory),
} as const satisfies Record<string, Price>;
export type PriceName = keyof typeof prices;
