import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { readDeploymentSettings, SettingsRefused } from '../../../infra/aws/settings.ts';
import { exampleFile } from './synthesised.ts';

const folder = mkdtempSync(join(tmpdir(), 'settings-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const read = (text: string) => {
  const file = join(folder, 'settings.json');
  writeFileSync(file, text);
  return readDeploymentSettings(file);
};
const example = () => JSON.parse(readFileSync(exampleFile, 'utf8')) as Record<string, any>;

describe('deployment settings', () => {
  it('reads the example', () => {
    expect(readDeploymentSettings(exampleFile).stage).toBe('prod');
  });

  it('names every problem at once, by field, with what would be right', () => {
    const wrong = example();
    wrong['utility'].timeZone = 'Central';
    wrong['evidence'].lockedDays = 0;
    wrong['stages'] = ['prod'];
    delete wrong['signIn'];
    const refused = () => read(JSON.stringify(wrong));
    expect(refused).toThrow(SettingsRefused);
    expect(refused).toThrow(/utility\.timeZone: /);
    expect(refused).toThrow(/evidence\.lockedDays: This must be 1 or more\./);
    expect(refused).toThrow(/stages: There is no field "stages" here\./);
    expect(refused).toThrow(/signIn: Fill this in/);
  });

  it.each<[field: string, right: string, spoil: (settings: Record<string, any>) => void]>([
    ['stage', 'Use small letters and digits', (all) => (all['stage'] = 'PROD-EU')],
    ['signIn.domainPrefix', 'Use 4 to 52 small letters', (all) => (all['signIn'].domainPrefix = 'Water!')],
    ['operators.emails.0', 'Give an email address', (all) => (all['operators'].emails = ['on-call'])],
    ['evidence.lockedDays', 'This must be a whole number', (all) => (all['evidence'].lockedDays = 1.5)],
    ['utility.timeZone', 'by its IANA name', (all) => (all['utility'].timeZone = 'Central')],
    ['utility.publicUrl', 'Give a whole address', (all) => (all['utility'].publicUrl = 'hydrants')],
    [
      'utility.publishing.mapTiles.url',
      'Give an https address with one host and {z}, {x} and {y} once each',
      ({ utility }) => (utility.publishing.mapTiles = { url: 'http://tiles/{z}', attribution: 'County' }),
    ],
    [
      'utility.publishing.alerts.sender',
      'Use no space, comma, less-than sign or ampersand',
      ({ utility }) =>
        (utility.publishing.alerts = {
          sender: 'a b',
          status: 'Test',
          urgency: 'Unknown',
          severity: 'Minor',
        }),
    ],
    [
      'utility.dispatchMessages.to.1.phone',
      'Give the number with its country',
      ({ utility }) => (utility.dispatchMessages.to[1].phone = '555-0101'),
    ],
    [
      'utility.publishing.relyForMinutes',
      'more than twice the interval, 11 minutes or more',
      ({ utility }) => (utility.publishing.relyForMinutes = 10),
    ],
    ['utility.fireCover.hoseFt', '100 or more', ({ utility }) => (utility.fireCover = { hoseFt: -1 })],
  ])('says what would be right of %s', (field, right, spoil) => {
    const wrong = example();
    spoil(wrong);
    expect(() => read(JSON.stringify(wrong))).toThrow(
      new RegExp(`  ${field}: .*${right.replaceAll(/[{}]/g, '\\$&')}`),
    );
  });

  it('has no time zone of its own: a wrong one bills wrong hours', () => {
    const without = example();
    delete without['utility'].timeZone;
    expect(() => read(JSON.stringify(without))).toThrow(/utility\.timeZone: Fill this in/);
  });

  it('says what to do when there is no file, or no JSON in it', () => {
    expect(() => readDeploymentSettings(join(folder, 'none.json'))).toThrow(
      /Copy infra\/aws\/settings\.example\.json to it/,
    );
    expect(() => read('{')).toThrow(/is not JSON/);
  });
});

describe('a name of its own', () => {
  const domain = {
    name: 'hydrants.millrace.example',
    certificateArn: 'arn:aws:acm:us-east-1:123456789012:certificate/00000000-0000-0000-0000-000000000000',
    hostedZone: null,
  };

  it('is also the address that letters name', () => {
    const wrong: Record<string, any> = { ...example(), domain };
    expect(() => read(JSON.stringify(wrong))).toThrow(
      /utility\.publicUrl: A domain is set, so this is its address: https:\/\/hydrants\.millrace\.example\//,
    );
    wrong['utility'].publicUrl = 'https://hydrants.millrace.example';
    expect(read(JSON.stringify(wrong)).domain?.name).toBe(domain.name);
  });

  it('needs a certificate where CloudFront looks for one', () => {
    const certificateArn = domain.certificateArn.replace('us-east-1', 'eu-west-1');
    expect(() => read(JSON.stringify({ ...example(), domain: { ...domain, certificateArn } }))).toThrow(
      /domain\.certificateArn: Give the ARN of a certificate in us-east-1/,
    );
  });
});
