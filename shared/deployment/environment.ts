/** Names of the environment variables that a handler reads. The same on one machine and on AWS; only values differ. */
export const environmentNames = {
  /** JSON of the utility's settings (`shared/utility/settings.ts`). */
  utility: 'UTILITY_SETTINGS',
  /** Another endpoint for the DynamoDB API; unset on AWS. */
  dynamodbEndpoint: 'DYNAMODB_ENDPOINT',
  /** Object stores as URLs: `s3://bucket/prefix` or `file:///folder`. */
  evidenceUrl: 'EVIDENCE_URL',
  publishedUrl: 'PUBLISHED_URL',
  inventoryUrl: 'INVENTORY_URL',
  /** The network models have a store of their own: private, and for one function alone. */
  networkUrl: 'NETWORK_URL',
  /** Folder of the built site (`server/`, `client/`) beside a publisher; unset: where `npm run build` leaves it. */
  siteFolder: 'SITE_FOLDER',
  tokenIssuer: 'TOKEN_ISSUER',
  tokenAudience: 'TOKEN_AUDIENCE',
  /** Where the issuer's keys are; unset: `<issuer>/.well-known/jwks.json`. */
  tokenKeysUrl: 'TOKEN_KEYS_URL',
  /** Base of the signed links a file-backed evidence store hands out; unset with S3, which signs its own. */
  evidenceLinkBase: 'EVIDENCE_LINK_BASE',
  evidenceLinkSecret: 'EVIDENCE_LINK_SECRET',
  /** The base of the page where people sign in; unset: they are given links. */
  signInPage: 'SIGN_IN_PAGE',
  /** What signs packets: `file:///key.json`, or the ARN of a KMS key. */
  packetKey: 'PACKET_KEY',
  /** The function that builds packets; unset: whoever is asked builds them itself. */
  packetJobsFunction: 'PACKET_JOBS_FUNCTION',
  /** What sends letters: `file:///folder`, or `ses:` for the mail service of the account. */
  mail: 'MAIL_URL',
  /** What sends text messages: `file:///folder`, or the ARN of the topic that has the numbers. */
  texts: 'TEXTS_URL',
} as const;

/** Where the layers are kept: beside the inventory, so that who may read the one may read the other. */
export const layersUrl = (inventoryUrl: string): string => `${inventoryUrl.replace(/\/+$/, '')}/layers`;
