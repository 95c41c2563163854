import { describe, expect, it } from 'vitest';
import { EnvironmentRefused, readEnvironment } from '../../functions/environment.ts';
import { environmentNames } from '../../shared/deployment/environment.ts';
import { tables } from '../../shared/deployment/tables.ts';
import { developmentIssuer } from '../../infra/local/issuer.ts';
import { demoUtility } from '../../infra/local/demo/index.ts';

const complete: Record<string, string> = {
  ...Object.fromEntries(Object.values(tables).map(({ environment }) => [environment, `${environment}-name`])),
  UTILITY_SETTINGS: JSON.stringify(demoUtility),
  EVIDENCE_URL: 's3://evidence/e/',
  PUBLISHED_URL: 's3://published',
  INVENTORY_URL: 's3://inventory',
  NETWORK_URL: 's3://network',
  TOKEN_ISSUER: 'https://issuer.example/pool',
  TOKEN_AUDIENCE: 'client',
};
const without = (name: string): Record<string, string> =>
  Object.fromEntries(Object.entries(complete).filter(([key]) => key !== name));
const message = (given: Record<string, string>): string => {
  try {
    readEnvironment(given);
    return 'accepted';
  } catch (error) {
    return error instanceof EnvironmentRefused ? error.message : String(error);
  }
};

describe('the environment of a handler', () => {
  it('is read whole; keys are found beside the issuer (OpenID Connect Discovery as Cognito serves it)', () => {
    expect(readEnvironment(complete)).toMatchObject({
      tokenKeysUrl: 'https://issuer.example/pool/.well-known/jwks.json',
      dynamodbEndpoint: null,
      evidenceLinks: null,
      tableNames: { submissions: 'SUBMISSIONS_TABLE-name' },
      utility: { timeZone: 'America/New_York' },
    });
  });

  it.each(Object.keys(complete))('without %s is refused by that name', (name) => {
    expect(message(without(name))).toBe(`${name} is missing`);
  });

  it('names everything that is wrong at once, and no value', () => {
    const said = message({
      ...without('TOKEN_AUDIENCE'),
      PUBLISHED_URL: 'ftp://secret-place',
      UTILITY_SETTINGS: '{"name":',
    });
    expect(said).toContain('TOKEN_AUDIENCE is missing');
    expect(said).toContain('PUBLISHED_URL');
    expect(said).toContain('UTILITY_SETTINGS is not JSON');
    expect(said).not.toContain('secret-place');
  });

  it('names the field of the settings that is wrong', () => {
    expect(
      message({
        ...complete,
        UTILITY_SETTINGS: JSON.stringify({ ...demoUtility, timeZone: 'Nowhere/Atall' }),
      }),
    ).toContain('UTILITY_SETTINGS.timeZone');
  });

  it('needs a base and a secret for links beside files', () => {
    expect(message({ ...complete, EVIDENCE_URL: 'file:///data/evidence' })).toContain('EVIDENCE_LINK_SECRET');
  });

  it('every name is one of the list that infra sets', () => {
    const known = [
      ...Object.values(environmentNames),
      ...Object.values(tables).map(({ environment }) => environment),
    ] as string[];
    for (const name of Object.keys(complete)) expect(known).toContain(name);
  });

  const deployed = { ...complete, AWS_LAMBDA_FUNCTION_NAME: 'records' };
  it('deployed, trusts a public issuer', () => {
    expect(message(deployed)).toBe('accepted');
  });
  it.each([
    developmentIssuer,
    'http://issuer.example/pool',
    'https://localhost:4780/local',
    'https://127.0.0.1/x',
    'https://[::1]/x',
    'https://a.localhost',
    'https://pool.invalid',
  ])('deployed, refuses the issuer %s', (issuer) => {
    expect(message({ ...deployed, TOKEN_ISSUER: issuer })).toContain('TOKEN_ISSUER is a development issuer');
    expect(message({ ...complete, TOKEN_ISSUER: issuer })).toBe('accepted');
  });
  it('deployed, refuses keys from the same machine', () => {
    expect(message({ ...deployed, TOKEN_KEYS_URL: 'http://127.0.0.1:4780/local/jwks.json' })).toContain(
      'TOKEN_KEYS_URL',
    );
  });
});
