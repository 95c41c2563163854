import { pathToFileURL } from 'node:url';
import { demoUtility } from '../../infra/local/demo/index.ts';
import { localTableNames } from '../../infra/local/dynamodb.ts';
import { developmentAudience, developmentIssuer } from '../../infra/local/issuer.ts';
import { environmentNames } from '../../shared/deployment/environment.ts';
import { tables, type TableName } from '../../shared/deployment/tables.ts';

export interface DeployedAt {
  /** Endpoints of the APIs: tables, objects, mail and texts. */
  readonly dynamodb: string;
  readonly s3: string;
  readonly services: string;
  /** Where the public keys of tokens are. */
  readonly keys: string;
  /** A JWK that signs packets. */
  readonly packetKeyFile: string;
  /** Where letters and texts are left. */
  readonly mailFolder: string;
}

/** The environment of a deployed function, with servers of this machine in the place of Amazon's. */
export function deployedEnvironment(at: DeployedAt): Record<string, string> {
  const mail = pathToFileURL(at.mailFolder).href;
  return {
    ...Object.fromEntries(
      (Object.keys(tables) as TableName[]).map((table) => [
        tables[table].environment,
        localTableNames[table],
      ]),
    ),
    [environmentNames.utility]: JSON.stringify(demoUtility),
    [environmentNames.dynamodbEndpoint]: at.dynamodb,
    [environmentNames.evidenceUrl]: 's3://evidence/',
    [environmentNames.publishedUrl]: 's3://published/pages/',
    [environmentNames.inventoryUrl]: 's3://inventory/',
    [environmentNames.networkUrl]: 's3://network/',
    [environmentNames.tokenIssuer]: developmentIssuer,
    [environmentNames.tokenAudience]: developmentAudience,
    [environmentNames.tokenKeysUrl]: at.keys,
    [environmentNames.packetKey]: pathToFileURL(at.packetKeyFile).href,
    [environmentNames.mail]: mail,
    [environmentNames.texts]: mail,
    AWS_ENDPOINT_URL_S3: at.s3,
    AWS_ENDPOINT_URL_SESV2: at.services,
    AWS_ENDPOINT_URL_SNS: at.services,
    AWS_REGION: 'us-east-1',
    // The body as it is, not in chunks with a checksum at the end.
    AWS_REQUEST_CHECKSUM_CALCULATION: 'WHEN_REQUIRED',
  };
}
